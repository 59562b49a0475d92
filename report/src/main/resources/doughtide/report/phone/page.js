const STEP_MS = 20000;
const SOON_HOURS = 0.1;

// Clock times of the dough's own zone, wherever the telephone is.
function Clock(data) {
  const mixed = Number(data.mixed);
  const days = data.days.split(' ');
  const offsets = data.offsets.split(' ').map(each => each.split(':').map(Number));
  const offsetAt = hours => (offsets.filter(each => each[0] <= hours).pop() || offsets[0])[1];
  const local = hours => mixed / 60 + hours * 60 + offsetAt(hours);
  const first = Math.floor(local(0) / 1440);
  const write = minutes => {
    const hour = Math.floor(minutes / 60) % 24;
    return document.body.dataset.clock === '12'
      ? (hour % 12 || 12) + ':' + two(minutes % 60) + '\u00a0' + (hour < 12 ? 'am' : 'pm')
      : two(hour) + ':' + two(minutes % 60);
  };
  this.hoursNow = () => (Date.now() / 1000 - mixed) / 3600;
  this.at = hours => {
    const minutes = Math.round(local(hours) / 5) * 5;
    const day = Math.floor(minutes / 1440) - first;
    const time = write(minutes % 1440);
    return day === 0 && data.named !== 'all' ? time : (days[day + 2] || '') + ' ' + time; // the first name is of two days before
  };
  this.stamp = hours => new Date(Math.round((mixed + hours * 3600) / 60) * 60000).toISOString();
  this.iso = hours => new Date(Math.round(local(hours)) * 60000).toISOString().slice(0, 16);
  this.ofDay = hours => this.iso(hours).slice(11);
  // A time of day as hours since mixing: the latest that is not to come, else the first after mixing.
  this.hoursOf = (text, last) => {
    const now = Math.min(this.hoursNow() + 0.25, last);
    const found = [];
    const wanted = 60 * Number(text.slice(0, 2)) + Number(text.slice(3, 5));
    for (let minute = 0; text && minute <= last * 60; minute++) {
      if (Math.round(local(minute / 60)) % 1440 === wanted) { found.push(minute / 60); }
    }
    const past = found.filter(h => h <= now);
    return past.length ? past[past.length - 1] : found.length ? found[0] : NaN;
  };
}

function Dough(article) {
  const data = article.dataset;
  const find = name => article.querySelector(name);
  const clock = new Clock(data);
  const list = text => text.split(' ').map(Number);
  const noise = list(data.noise);
  const dough = {
    hours: Number(data.hours),
    grid: list(data.grid),
    curves: numbers(data.curves, Number(data.floor), Number(data.top)),
    factors: numbers(data.factors, Number(data.factorLow), Number(data.factorHigh)),
    noise: { share: noise[0], constant: noise[1], freedom: noise[2], independent: noise[3], chance: noise[4], fewest: noise[5] }
  };
  dough.slopes = slopes(dough.grid, dough.curves, dough.factors.length);
  dough.tops = tops(dough.curves, dough.factors.length);
  const warmth = data.warmth ? data.warmth.split(' ').map(each => each.split(':').map(Number)) : [];
  const events = Array.prototype.map.call(article.querySelectorAll('tr[data-event]'), row => ({
    row: row,
    key: row.dataset.event,
    percent: row.dataset.percent,
    first: ['early', 'likely', 'late'].map(each => (row.dataset[each] ? Number(row.dataset[each]) : Infinity)),
    members: numbers(row.dataset.members, 0, dough.hours)
  }));
  events.forEach(event => { event.order = sorted(event.members); });
  const asked = events.filter(each => each.key === data.answer)[0];
  let answer = asked;
  const until = events.filter(each => each.key === data.until)[0];
  const given = data.readings ? data.readings.split(' ').map(each => ({ hours: Number(each.split(':')[0]), rise: Number(each.split(':')[1]) })) : [];
  const printed = new Map();
  const alarms = new Map();
  article.querySelectorAll('.answer, [data-step] .clock').forEach(each => printed.set(each, each.textContent));
  let kept = { given: data.readings, readings: given.slice(), ticks: {}, start: '' };
  let whenTyped = false;
  let weights = weigh(dough, []);
  let whens = {};
  this.dough = dough;
  this.events = events;
  this.clock = clock;

  function load() {
    try {
      const text = localStorage.getItem(data.store);
      if (text) { kept = JSON.parse(text); }
      if (kept.given !== data.readings) {
        const isNew = each => kept.readings.every(other => Math.abs(other.hours - each.hours) > 0.9 / 60);
        kept.readings = kept.readings.concat(given.filter(isNew)).sort((a, b) => a.hours - b.hours);
        kept.given = data.readings;
      }
    } catch (e) {
      tell(words.notKept);
    }
  }
  function save() {
    try {
      localStorage.setItem(data.store, JSON.stringify(kept));
    } catch (e) {
      tell(words.notKept);
    }
  }
  function heights() {
    return kept.readings.filter(each => typeof each.rise === 'number');
  }
  function isOf(one, other) {
    return Math.abs(one.hours - other.hours) < 0.9 / 60 && Math.abs(one.rise - other.rise) < 1e-4;
  }
  // Whether the readings are those that the page was made with: then it says what the program said.
  function isGiven() {
    const read = heights();
    return read.length === given.length && read.every((each, i) => isOf(each, given[i]));
  }
  // The rise asked for, half as much again for a dough in hand; once it is read, the next one to come, as the program has it.
  function awaited() {
    if (isGiven() || !asked.percent) { return asked; }
    const highest = heights().reduce((most, each) => Math.max(most, each.rise), 0);
    const usual = given.length ? events.filter(each => Number(each.percent) === 50)[0] || asked : asked;
    return [usual].concat(events).filter(each => each.percent / 100 > highest)[0] || usual;
  }
  // When it was likely before any reading.
  function expected() {
    return answer !== asked ? quantile(distribution(answer.members, weigh(dough, []), answer.order), 0.5)
      : data.expected ? Number(data.expected) : Infinity;
  }
  function write(element, text) {
    put(element, isGiven() ? printed.get(element) : text());
  }
  function windowOf(event) {
    if (isGiven()) { return event.first; }
    return [0.1, 0.5, 0.9].map(level => quantile(when(event), level));
  }
  // Worked out once for each set of readings.
  function when(event) {
    if (!whens[event.key]) { whens[event.key] = whenIs(dough, weights, event); }
    return whens[event.key];
  }
  // The hour to plan for: the likely one, or the middle of a time that has an end.
  function planned() {
    const from = windowOf(answer)[1];
    return until ? (from + windowOf(until)[1]) / 2 : from;
  }
  function time(hours) {
    return isFinite(hours) ? clock.at(hours) : '–';
  }
  function shown(hours) {
    return 100 * quantile(distribution(highest(dough, hours), weights), 0.5);
  }
  function answerWords(at) {
    if (!isFinite(planned())) {
      return data.rise || until ? say('never', { rise: percent(Number(answer.percent || data.rise)) }) : words['lesson.noShape'];
    }
    const main = until ? say('ready', { time: time(planned()), from: time(at[1]), until: time(windowOf(until)[1]) }) : answer.key === 'shape'
      ? say('shape', { time: time(at[1]), rise: percent(shown(at[1])) })
      : say(answer.percent ? 'risen' : answer.key, { time: time(at[1]), rise: percent(answer.percent) });
    return main + ' ' + (isFinite(at[2]) ? say('window', { early: time(at[0]), late: time(at[2]) }) : say('open', { early: time(at[0]) }));
  }
  function countDown() {
    const now = clock.hoursNow();
    const at = planned();
    const left = at - now;
    put(find('.left'), !isFinite(at) ? ''
      : Math.abs(left) < 1 / 24 ? words.about
        : say(left > 0 ? 'in' : 'ago', { hours: duration(left) }));
    dots(now);
    article.querySelectorAll('.over').forEach(over => nowLine(over, now));
  }
  function twenty() {
    const there = data.dots ? list(data.dots) : [];
    const times = [];
    for (let i = 0; i < 20; i++) {
      times.push(!isGiven() ? quantile(when(answer), (i + 0.5) / 20) : i < there.length ? there[i] : Infinity);
    }
    return times;
  }
  function dots(now) {
    const svg = find('.dots svg');
    const times = twenty();
    const seen = times.filter(isFinite);
    const end = Math.max(seen.length ? seen[seen.length - 1] : 1, 1);
    const start = seen.length ? Math.max(0, seen[0] - (end - seen[0]) * 0.08) : 0;
    const x = hours => 12 + 316 * Math.min(Math.max((hours - start) / (end - start), 0), 1);
    svg.textContent = '';
    draw(svg, 'line', { x1: 6, x2: 334, y1: 48, y2: 48 });
    const free = [];
    seen.forEach(at => {
      let lane = 0;
      while (lane < 3 && free[lane] > x(at) - 13) { lane++; }
      free[lane] = x(at);
      draw(svg, 'circle', { cx: x(at), cy: 40 - 13 * lane, r: 5, 'class': at > now ? 'to-come' : 'past' });
    });
    draw(svg, 'text', { x: 6, y: 62 }, time(start));
    draw(svg, 'text', { x: 334, y: 62, 'text-anchor': 'end' }, time(end));
    if (now > start && now < end) { draw(svg, 'line', { x1: x(now), x2: x(now), y1: 2, y2: 52, 'class': 'now' }); }
    put(find('.dots-left'), say('left', { left: times.filter(at => at > now).length }));
  }
  // Where the plot lies: top, bottom, lowest and highest rise, then hours and places of the level axis.
  function frame(over) {
    const f = list(over.getAttribute('data-frame'));
    const last = f.length - 2;
    return {
      right: f[last + 1], top: f[0], bottom: f[1], most: f[last],
      x: hours => {
        let i = 4;
        while (i < last - 2 && f[i + 2] < hours) { i += 2; }
        const part = Math.min(Math.max((hours - f[i]) / (f[i + 2] - f[i]), 0), 1);
        return f[i + 1] + part * (f[i + 3] - f[i + 1]);
      },
      y: rise => f[1] - (f[1] - f[0]) * Math.min(Math.max((rise - f[2]) / (f[3] - f[2]), 0), 1)
    };
  }
  function nowLine(over, now) {
    const on = frame(over);
    over.querySelectorAll('.moving').forEach(each => over.removeChild(each));
    if (now < 0 || now > on.most) { return; }
    const x = on.x(now);
    draw(over, 'line', { x1: x, x2: x, y1: on.top, y2: on.bottom, 'class': 'now moving' });
    const isLeft = x > on.right - 50;
    draw(over, 'text', { x: isLeft ? x - 4 : x + 4, y: on.top + 12, 'text-anchor': isLeft ? 'end' : 'start', 'class': 'moving' }, words.now);
  }
  // Early, likely and late rise at even hours, to the end of the bulk where a loaf is meant.
  function band() {
    const late = windowOf(answer)[2];
    const end = Math.min(dough.hours, answer.key === 'shape' && isFinite(late) ? late : Infinity);
    const points = [];
    for (let i = 0; i <= 16; i++) {
      const of = distribution(rises(dough, end * i / 16), weights);
      points.push({ hours: end * i / 16, percent: [0.1, 0.5, 0.9].map(level => 100 * quantile(of, level)) });
    }
    return points;
  }
  function overlay(over, points) {
    const on = frame(over);
    over.textContent = '';
    (points.length ? ['band', 'line', 'band'] : []).forEach((kind, k) => {
      const path = points.filter(each => each.hours <= on.most)
        .map(each => on.x(each.hours).toFixed(1) + ',' + on.y(each.percent[k]).toFixed(1));
      draw(over, 'polyline', { points: path.join(' '), 'class': kind });
    });
    heights().forEach(each => {
      const x = on.x(each.hours);
      const y = on.y(100 * each.rise);
      draw(over, 'path', { d: 'M' + (x - 4) + ' ' + (y - 4) + 'l8 8m-8 0l8 -8', 'class': 'cross' });
    });
  }
  function steps() {
    const moved = windowOf(answer)[1] - answer.first[1];
    article.querySelectorAll('[data-step]').forEach(step => {
      const event = events.filter(each => each.key === step.dataset.event)[0];
      let at = Number(step.dataset.hours);
      if (event) {
        const of = windowOf(event);
        at = of[1];
        write(step.querySelector('.clock'), () => time(of[1]) + ' (' + time(of[0]) + '–' + time(of[2]) + ')');
      } else if (step.dataset.event === 'ready') {
        at = planned();
        write(step.querySelector('.clock'), () => time(at));
      } else if (step.dataset.event === 'after') {
        at += moved;
        write(step.querySelector('.clock'), () => time(at));
      }
      if (isFinite(at) && alarms.get(step) !== at) {
        step.querySelector('.alarm').href = calendar(step.dataset.ics, at);
        alarms.set(step, at);
      }
    });
  }
  function calendar(text, at) {
    const plain = stamp => stamp.replace(/[-:]|\.\d+/g, '');
    const filled = text.replace('[from]', plain(clock.stamp(at))).replace('[to]', plain(clock.stamp(at + 1 / 12)))
      .replace('[now]', plain(new Date().toISOString())).replace(/\r?\n/g, '\r\n');
    return 'data:text/calendar;charset=utf-8,' + encodeURIComponent(filled);
  }
  // How far the members of this page are from the program with the readings that both know.
  function offProgram() {
    const here = quantile(distribution(asked.members, weigh(dough, given), asked.order), 0.5);
    return isFinite(here) && isFinite(asked.first[1]) ? Math.abs(here - asked.first[1]) : 0;
  }
  function messages() {
    const said = [];
    const last = heights().slice(-1)[0];
    if (last) {
      const why = doubt(dough, heights().slice(0, -1), last);
      if (why) { said.push(words['doubt.' + why]); }
      if (!isGiven() && carrying(weights) < dough.noise.fewest) { said.push(words.thin); }
    }
    const off = isGiven() ? 0 : offProgram();
    if (off > 1 / 12) { said.push(say('off', { hours: duration(off) })); }
    kept.readings.forEach(each => {
      const expected = warmth.filter(w => w[0] <= each.hours).pop();
      if (typeof each.celsius === 'number' && expected && Math.abs(each.celsius - expected[1]) > 1) {
        said.push(say('warmer', { time: time(each.hours), read: degrees(each.celsius), expected: degrees(expected[1]) }));
      }
    });
    return said.join(' ');
  }
  function degrees(celsius) {
    return data.scale === 'F' ? number(celsius * 1.8 + 32, 0) + '\u00a0°F' : number(celsius, 1) + '\u00a0°C';
  }
  function lookWords() {
    const last = kept.readings.length ? kept.readings[kept.readings.length - 1].hours : 0;
    const at = isGiven() && data.look ? Number(data.look) : lookFor(dough, weights, answer, last);
    const ahead = expected() - windowOf(answer)[1];
    const pace = !heights().length || !isFinite(ahead) ? ''
      : Math.abs(ahead) < 0.05 ? words.onTime : say(ahead > 0 ? 'ahead' : 'behind', { hours: duration(ahead) });
    return (pace + ' ' + (at > clock.hoursNow() + SOON_HOURS ? say('look', { time: time(at) }) : words.lookNow)).trim();
  }
  function readings() {
    const ul = find('.readings');
    ul.textContent = '';
    find('.none').hidden = kept.readings.length > 0;
    kept.readings.forEach((each, i) => {
      const item = document.createElement('li');
      const text = document.createElement('span');
      const parts = [time(each.hours)];
      if (typeof each.rise === 'number') { parts.push(percent(100 * each.rise)); }
      if (typeof each.celsius === 'number') { parts.push(degrees(each.celsius)); }
      text.textContent = parts.join(' · ');
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = words.remove;
      button.setAttribute('aria-label', words.remove + ' ' + text.textContent);
      button.addEventListener('click', () => { kept.readings.splice(i, 1); save(); show(); find('.height').focus(); });
      item.appendChild(text);
      item.appendChild(button);
      ul.appendChild(item);
    });
  }
  function asText() {
    const cell = value => (typeof value === 'number' ? String(Math.round(value * 100) / 100) : '');
    const lines = kept.readings.map(each => clock.iso(each.hours) + ';' + cell(each.rise * 100) + ';' + cell(each.celsius) + ';');
    return data.head + lines.map(line => line.replace('NaN', '') + '\n').join('');
  }
  function show() {
    weights = weigh(dough, heights());
    whens = {};
    answer = awaited();
    write(find('.answer'), () => answerWords(windowOf(answer)));
    events.forEach(event => {
      windowOf(event).forEach((hours, i) => { put(event.row.cells[i + 1], time(hours)); });
    });
    put(find('.message'), messages());
    put(find('.look'), lookWords());
    readings();
    const points = isGiven() ? [] : band();
    article.querySelectorAll('.over').forEach(over => overlay(over, points));
    find('.crosses').hidden = heights().length === 0;
    find('.with-readings').hidden = isGiven();
    steps();
    const text = asText();
    find('.text').value = text;
    find('.download').href = 'data:text/plain;charset=utf-8,' + encodeURIComponent(text);
    countDown();
  }
  function add(event) {
    event.preventDefault();
    const height = find('.height').value.trim();
    const celsius = find('.degrees').value.trim();
    const isMm = find('.unit').value === 'mm';
    const start = typed(find('.start-height').value);
    const hours = clock.hoursOf(find('.when').value, dough.hours);
    const rise = isMm ? typed(height) / start - 1 : typed(height) / 100;
    const read = typed(celsius);
    const problem =
      height === '' && celsius === '' || height !== '' && !isFinite(typed(height)) ? words.badHeight
        : height !== '' && isMm && !(start > 0) ? words.badStart
          : height !== '' && !(rise > -0.6 && rise < 9) ? words.badHeight
            : celsius !== '' && !isFinite(read) ? words.badDegrees
              : !isFinite(hours) ? words.badTime
                : kept.readings.some(each => Math.abs(each.hours - hours) < 0.9 / 60) ? words.badTwice : '';
    if (problem) {
      find('.message').textContent = problem;
      return;
    }
    const reading = { hours: hours };
    if (height !== '') { reading.rise = rise; }
    if (celsius !== '') { reading.celsius = data.scale === 'F' ? (read - 32) / 1.8 : read; }
    kept.readings.push(reading);
    kept.readings.sort((a, b) => a.hours - b.hours);
    kept.start = find('.start-height').value;
    whenTyped = false;
    fillWhen();
    find('.height').value = '';
    find('.degrees').value = '';
    save();
    show();
  }
  function fillWhen() {
    if (whenTyped) { return; }
    const now = clock.hoursNow();
    find('.when').value = clock.ofDay(now < 0 || now > dough.hours ? 0 : now);
  }
  function wire() {
    find('.reading').addEventListener('submit', add);
    find('.when').addEventListener('input', () => { whenTyped = true; });
    find('.unit').addEventListener('change', () => { find('.start').hidden = find('.unit').value !== 'mm'; });
    article.querySelectorAll('[data-step] input').forEach(box => {
      const key = box.closest('[data-step]').dataset.step;
      box.checked = Boolean(kept.ticks[key]);
      box.addEventListener('change', () => { kept.ticks[key] = box.checked; save(); });
    });
    find('.start-height').value = kept.start || '';
    find('.copy').addEventListener('click', copy);
    find('.share').hidden = !navigator.share;
    find('.share').addEventListener('click', share);
    find('.download').addEventListener('click', () => offer(words.saved));
  }
  // Told again, too, where the same was told before.
  function tell(text) {
    find('.kept').textContent = '';
    find('.kept').textContent = text;
  }
  // The text is left selected for who has to copy it by hand.
  function offer(text) {
    find('.text').focus();
    find('.text').select();
    tell(text);
  }
  function copy() {
    const byHand = () => {
      offer(words.notCopied);
      if (document.execCommand('copy')) { tell(words.copied); }
    };
    if (navigator.clipboard) { navigator.clipboard.writeText(asText()).then(() => tell(words.copied), byHand); } else { byHand(); }
  }
  // Who closes the sharing again knows that nothing was shared.
  function share() {
    const failed = problem => { if (problem.name !== 'AbortError') { offer(words.notShared); } };
    try {
      navigator.share({ title: data.name, text: asText() }).catch(failed);
    } catch (problem) {
      failed(problem);
    }
  }
  load();
  wire();
  fillWhen();
  show();
  setInterval(() => { countDown(); if (document.activeElement !== find('.when')) { fillWhen(); } }, STEP_MS);
}

function stayAwake() {
  if (!navigator.wakeLock || document.visibilityState !== 'visible') { return; }
  navigator.wakeLock.request('screen').then(() => { document.querySelector('.awake').hidden = false; }, () => {});
}
document.addEventListener('visibilitychange', stayAwake);
stayAwake();
const doughs = Array.prototype.map.call(document.querySelectorAll('article.dough'), article => new Dough(article));
