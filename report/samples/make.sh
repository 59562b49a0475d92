#!/usr/bin/env bash
# Makes the sample pages beside this file: report/samples/make.sh, after mvn package.
# The pictures need pdftoppm of poppler.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
handout() {
  java -jar ../../cli/target/doughtide.jar handout "$@" --date 2027-03-06 --overwrite
}
java -jar ../../cli/target/doughtide.jar rise --dough-temp 25C --starter 20% \
  --starter-hydration 100% --hydration 72% --salt 2% --mixed-at 2027-03-06T09:30 \
  --zone Europe/Lisbon --paper A5 --chart rise.png --overwrite
java -jar ../../cli/target/doughtide.jar bake-day --ready-at 2027-03-14T12:00 \
  --at-the-bench 06:30-08:30,17:00-22:30 --room 21C --cold 4C --loaves 2 --plans 1 \
  --zone Europe/London --paper A5 --chart bake-day.png --overwrite
dough=(--flour "strong white:80%,wholemeal rye:20%" --hydration 72%)
handout bake-sheet --out bake-sheet.pdf --title "Quayside bread class: country dough" \
  "${dough[@]}" --dough-temp 24C --mixed-at 2027-03-06T09:30 --zone Europe/London \
  --cold 4C --hold 14h
handout bake-sheet --out bake-sheet-de.pdf --language de "${dough[@]}" --dough-temp 24C \
  --mixed-at 2027-03-06T09:30 --zone Europe/Berlin --cold 4C --hold 14h
handout comparison --out comparison.pdf "${dough[@]}" --vary "dough-temp:20C,23C,26C"
handout comparison --out exercise.pdf "${dough[@]}" --vary "dough-temp:20C,23C,26C" --students
handout hours-table --out hours-table.pdf "${dough[@]}"
handout why-it-rises --out why-it-rises.pdf "${dough[@]}" --dough-temp 24C
for page in bake-sheet bake-sheet-de comparison hours-table why-it-rises; do
  pdftoppm -gray -r 72 -png -singlefile "$page.pdf" "$page"
done
