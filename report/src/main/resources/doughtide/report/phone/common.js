const SVG = 'http://www.w3.org/2000/svg';
const words = {};
document.querySelectorAll('.words [data-word]').forEach(each => { words[each.dataset.word] = each.textContent; });
function say(key, values) {
  return words[key].replace(/\{([a-z]+)\}/g, (all, name) => values[name]);
}
function number(value, decimals) {
  return value.toFixed(decimals).replace('.', document.body.dataset.decimal);
}
function percent(value) {
  return number(Math.round(value), 0) + document.body.dataset.gap + '%';
}
function fives(hours) {
  return Math.round(hours * 12) * 5;
}
function duration(hours) {
  const minutes = fives(Math.abs(hours));
  const rest = minutes % 60 + '\u00a0min';
  const whole = Math.floor(minutes / 60) + '\u00a0h';
  return minutes < 60 ? rest : minutes % 60 ? whole + '\u00a0' + rest : whole;
}
function two(value) {
  return (value < 10 ? '0' : '') + value;
}
function typed(text) {
  const clean = text.trim().replace(',', '.').replace(/ ?(%|mm|°?[CF])$/i, '');
  return /^-?\d+(\.\d+)?$/.test(clean) ? Number(clean) : NaN;
}
// What did not change is not laid out, nor told, again.
function put(element, text) {
  if (element.textContent !== text) { element.textContent = text; }
}
function draw(parent, name, attributes, text) {
  const element = document.createElementNS(SVG, name);
  Object.keys(attributes).forEach(key => element.setAttribute(key, attributes[key]));
  if (text) { element.textContent = text; }
  parent.appendChild(element);
  return element;
}
// Two bytes a number, the lower first; the largest code is infinite.
function numbers(base64, low, high) {
  const bytes = atob(base64);
  const values = new Float64Array(bytes.length / 2);
  for (let i = 0; i < values.length; i++) {
    const step = bytes.charCodeAt(2 * i) + 256 * bytes.charCodeAt(2 * i + 1);
    values[i] = step === 65535 ? Infinity : low + (high - low) * step / 65534;
  }
  return values;
}
