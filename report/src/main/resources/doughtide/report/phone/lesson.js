// A dough of a computed grid beside the one as given: no sums but differences.
function Lesson(article) {
  const data = article.dataset;
  const find = name => article.querySelector(name);
  const end = Number(data.hours);
  const top = Number(data.top);
  const points = Number(data.points);
  const sliders = Array.prototype.slice.call(article.querySelectorAll('input[type="range"]'));
  const values = Array.prototype.map.call(article.querySelectorAll('.values'), ul =>
    Array.prototype.map.call(ul.children, li => li.textContent));
  const cells = Array.prototype.map.call(article.querySelectorAll('.cells li'), li => ({
    windows: li.dataset.windows.split(' ').map(each => each.split(',').map(n => (n ? Number(n) : Infinity))),
    jar: li.dataset.jar ? Number(li.dataset.jar) : NaN,
    dots: li.dataset.dots ? li.dataset.dots.split(' ').map(Number) : [],
    curves: [li.dataset.low, li.dataset.middle, li.dataset.high].map(text => numbers(text, 0, 250))
  }));
  const rows = Array.prototype.slice.call(article.querySelectorAll('tbody tr'));
  const asked = Number(data.row);
  const isShape = data.key === 'shape';
  const given = cells[Number(data.given)];
  const x = hours => 36 + 296 * Math.min(Math.max(hours / end, 0), 1);
  const y = percent => 204 - 190 * Math.min(Math.max(percent / top, 0), 1);

  this.cells = cells;
  function chosen() {
    return cells[sliders.reduce((sum, each) => sum + Number(each.value) * Number(each.dataset.stride), 0)];
  }
  function length(hours) {
    return isFinite(hours) ? duration(hours) : '–';
  }
  // In a narrow column minutes may stand under hours.
  function narrow(hours) {
    return length(hours).replace('h\u00a0', 'h ');
  }
  function answer(cell) {
    const window = cell.windows[asked];
    if (!isFinite(window[1])) { return isShape ? words['lesson.noShape'] : say('never', { rise: data.rise }); }
    return say(isShape ? 'lesson.shape' : 'lesson.risen', { rise: isShape ? percent(cell.jar) : data.rise, hours: length(window[1]) }) + ' '
      + (isFinite(window[2]) ? say('lesson.window', { early: length(window[0]), late: length(window[2]) })
        : say('lesson.open', { early: length(window[0]) }));
  }
  function compare(cell) {
    const off = cell.windows[asked][1] - given.windows[asked][1];
    if (cell === given) { return words['lesson.isGiven']; }
    if (!isFinite(off)) { return ''; }
    return fives(Math.abs(off)) === 0 ? words['lesson.same'] : say(off > 0 ? 'lesson.later' : 'lesson.sooner', { hours: duration(off) });
  }
  function path(curve) {
    return Array.prototype.map.call(curve, (percent, i) => [end * i / (points - 1), percent]).filter(each => isFinite(each[1]))
      .map(each => x(each[0]).toFixed(1) + ',' + y(each[1]).toFixed(1));
  }
  function curves(cell) {
    const svg = find('.curves');
    svg.textContent = '';
    const band = path(cell.curves[0]).concat(path(cell.curves[2]).reverse());
    draw(svg, 'polygon', { points: band.join(' '), 'class': 'eight' });
    const step = top > 150 ? 50 : 25;
    for (let at = 0; at <= top; at += step) {
      draw(svg, 'line', { x1: 36, x2: 332, y1: y(at), y2: y(at), 'class': 'grid' });
      draw(svg, 'text', { x: 32, y: y(at) + 4, 'text-anchor': 'end' }, percent(at));
    }
    const every = [1, 2, 3, 4, 6, 12, 24].filter(each => end / each <= 8)[0] || 48;
    for (let at = 0; at <= end; at += every) {
      draw(svg, 'line', { x1: x(at), x2: x(at), y1: 14, y2: 204, 'class': 'grid' });
      draw(svg, 'text', { x: x(at), y: 220, 'text-anchor': 'middle' }, at + '\u00a0h');
    }
    const mark = y(isShape ? cell.jar : Number(data.percent));
    if (isFinite(mark)) { draw(svg, 'line', { x1: 36, x2: 332, y1: mark, y2: mark, 'class': 'mark' }); }
    draw(svg, 'polyline', { points: path(given.curves[1]).join(' '), 'class': 'given' });
    draw(svg, 'polyline', { points: path(cell.curves[1]).join(' '), 'class': 'chosen' });
  }
  function dotRow(svg, cell, base, kind) {
    const free = [];
    cell.dots.filter(at => at <= end).forEach(at => {
      let lane = 0;
      while (lane < 2 && free[lane] > x(at) - 11) { lane++; }
      free[lane] = x(at);
      draw(svg, 'circle', { cx: x(at), cy: base - 11 * lane, r: 4.5, 'class': kind });
    });
    draw(svg, 'line', { x1: 36, x2: 332, y1: base + 7, y2: base + 7 });
  }
  function dots(cell) {
    const svg = find('.dots svg');
    svg.textContent = '';
    dotRow(svg, cell, 32, 'past');
    dotRow(svg, given, 78, 'to-come');
  }
  function show() {
    const cell = chosen();
    sliders.forEach((each, i) => {
      const value = values[i][Number(each.value)];
      each.setAttribute('aria-valuetext', value);
      each.parentNode.querySelector('.value').textContent = value;
    });
    find('.answer').textContent = answer(cell);
    find('.compare').textContent = compare(cell);
    rows.forEach((row, r) => {
      const window = cell.windows[r];
      row.cells[1].textContent = narrow(window[1]);
      row.cells[2].textContent = narrow(window[0]) + ' – ' + narrow(window[2]);
    });
    curves(cell);
    dots(cell);
  }
  sliders.forEach(each => each.addEventListener('input', show));
  find('.back').addEventListener('click', () => {
    sliders.forEach(each => { each.value = each.dataset.given; });
    show();
  });
  show();
}
const lessons = Array.prototype.map.call(document.querySelectorAll('article.lesson'), article => new Lesson(article));
