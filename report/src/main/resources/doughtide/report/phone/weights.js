// Weights and quantiles over the members of a forecast, as the library's live dough has them.
function firstAfter(grid, hours) {
  let after = 1;
  while (after < grid.length - 1 && grid[after] <= hours) { after++; }
  return after;
}
// The slopes of the monotone cubic of Fritsch and Butland at the hours of the grid, once for all members.
function slopes(grid, curves) {
  const found = new Float64Array(curves.length);
  for (let from = 0; from < curves.length; from += grid.length) {
    for (let i = 0; i < grid.length; i++) { found[from + i] = slope(grid, curves, from, i); }
  }
  return found;
}
function slope(grid, values, from, i) {
  const last = grid.length - 1;
  if (i === 0 || i === last) { return secant(grid, values, from, Math.min(i, last - 1)); }
  const before = secant(grid, values, from, i - 1);
  const after = secant(grid, values, from, i);
  if (before * after <= 0) { return 0; }
  const wide = grid[i + 1] - grid[i];
  const wideBefore = grid[i] - grid[i - 1];
  const w0 = 2 * wide + wideBefore;
  const w1 = wide + 2 * wideBefore;
  return (w0 + w1) / (w0 / before + w1 / after);
}
function secant(grid, values, from, i) {
  return (values[from + i + 1] - values[from + i]) / (grid[i + 1] - grid[i]);
}
// What stands between two hours of the grid is the same for all members.
function rises(dough, hours) {
  const grid = dough.grid;
  const after = firstAfter(grid, hours);
  const width = grid[after] - grid[after - 1];
  const s = (hours - grid[after - 1]) / width;
  const rest = 1 - s;
  const left = rest * rest * (1 + 2 * s);
  const leftSlope = rest * rest * s * width;
  const right = s * s * (1 + 2 * rest);
  const rightSlope = s * s * rest * width;
  const found = new Float64Array(dough.factors.length);
  for (let m = 0; m < found.length; m++) {
    const at = m * grid.length + after;
    found[m] = left * dough.curves[at - 1] + leftSlope * dough.slopes[at - 1] + right * dough.curves[at] - rightSlope * dough.slopes[at];
  }
  return found;
}
function highest(dough, hours) {
  const most = rises(dough, hours);
  for (let m = 0; m < most.length; m++) {
    for (let i = 0; i < dough.grid.length && dough.grid[i] <= hours; i++) {
      most[m] = Math.max(most[m], dough.curves[m * dough.grid.length + i]);
    }
  }
  return most;
}
function deviation(dough, rise) {
  return dough.noise.constant + dough.noise.share * Math.max(1 + rise, 0);
}
// One weight a member: Student's t around each height read, as a jar misreads it.
function weigh(dough, readings) {
  const weights = new Float64Array(dough.factors.length);
  const crowd = Math.max(1, readings.length / dough.noise.independent);
  const nu = dough.noise.freedom;
  readings.forEach(reading => {
    const wide = deviation(dough, reading.rise) * Math.sqrt(crowd);
    const there = rises(dough, reading.hours);
    for (let m = 0; m < there.length; m++) {
      const off = ((1 + there[m]) * dough.factors[m] - 1 - reading.rise) / wide;
      weights[m] -= (nu + 1) * Math.log1p(off * off / nu) / 2;
    }
  });
  let best = -Infinity;
  for (let m = 0; m < weights.length; m++) { best = Math.max(best, weights[m]); }
  for (let m = 0; m < weights.length; m++) { weights[m] = Math.exp(weights[m] - best); }
  return weights;
}
function carrying(weights) {
  let sum = 0;
  let squares = 0;
  for (let m = 0; m < weights.length; m++) {
    sum += weights[m];
    squares += weights[m] * weights[m];
  }
  return sum * sum / squares;
}
function sorted(values, weights) {
  const order = [];
  for (let m = 0; m < values.length; m++) {
    if (!weights || weights[m] > 0) { order.push(m); }
  }
  return order.sort((a, b) => (values[a] < values[b] ? -1 : values[a] > values[b] ? 1 : a - b));
}
// The order of the values, where it is known, spares sorting them for every set of weights.
function distribution(values, weights, order) {
  const used = order ? order.filter(m => weights[m] > 0) : sorted(values, weights);
  const upTo = [];
  let sum = 0;
  used.forEach(m => { sum += weights[m]; upTo.push(sum); });
  let stretch = 0;
  used.forEach(m => { stretch += weights[m] * weights[m] / sum / sum; });
  return { sorted: used.map(m => values[m]), upTo: upTo.map(u => u / sum), stretch: stretch };
}
// Type 7 of the weighted quantiles; with equal weights the usual type 7.
function quantile(of, level) {
  const low = level * (1 - of.stretch);
  const high = low + of.stretch;
  const last = of.sorted.length - 1;
  let first = 0;
  while (first < last && of.upTo[first] <= low + 1e-9 * of.stretch) { first++; }
  let mean = of.sorted[first];
  for (let i = first + 1; i <= last && of.upTo[i - 1] < high; i++) {
    const share = (Math.min(of.upTo[i], high) - Math.max(of.upTo[i - 1], low)) / of.stretch;
    mean += share > 1e-9 ? share * (of.sorted[i] - of.sorted[first]) : 0;
  }
  return mean;
}
function reached(of, hours) {
  let share = 0;
  of.sorted.forEach((value, i) => { share = value <= hours ? of.upTo[i] : share; });
  return share;
}
// Abramowitz and Stegun 7.1.26, to 1.5e-7.
function normal(z) {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const erf = 1 - poly * Math.exp(-x * x);
  return z < 0 ? (1 - erf) / 2 : (1 + erf) / 2;
}
function chance(dough, weights, hours, height, factor) {
  const wide = deviation(dough, height - 1);
  const there = rises(dough, hours);
  let below = 0;
  let sum = 0;
  for (let m = 0; m < there.length; m++) {
    below += weights[m] * normal((height - (1 + there[m]) * dough.factors[m] * factor) / wide);
    sum += weights[m];
  }
  return 2 * Math.min(below / sum, 1 - below / sum);
}
// Why a reading can hardly be of this dough, judged by the readings before it; empty if it fits.
function doubt(dough, before, reading) {
  const weights = weigh(dough, before);
  const height = 1 + reading.rise;
  const least = dough.noise.chance;
  if (chance(dough, weights, reading.hours, height, 1) >= least) { return ''; }
  let clock = 0;
  [-12, -1, 1, 12].map(slip => reading.hours + slip)
    .filter(at => at >= 0 && at <= dough.hours)
    .forEach(at => { clock = Math.max(clock, chance(dough, weights, at, height, 1)); });
  let mark = 0;
  [0.7, 0.8, 0.9, 1.1, 1.25, 1.4].forEach(factor => {
    mark = Math.max(mark, chance(dough, weights, reading.hours, height, factor));
  });
  const fell = before.some(each => 1 + each.rise > height * 1.02);
  if (!fell && clock > Math.max(mark, least)) { return 'CLOCK_WRONG'; }
  return mark >= least ? 'MARK_MOVED' : 'OTHER_DOUGH';
}
// The hour at which one more reading narrows the times most, before the early one; NaN for now.
function nextLook(dough, weights, times, last) {
  const early = quantile(distribution(times, weights), 0.1);
  const first = last + 0.25;
  if (!isFinite(early) || !(early > first)) { return NaN; }
  let best = first;
  let most = -1;
  for (let i = 0; i <= 24; i++) {
    const at = first + (early - first) * i / 24;
    const worth = gain(dough, weights, times, at);
    if (worth > most) { most = worth; best = at; }
  }
  return best;
}
// What a reading takes off the variance of a time, by regression over the members that get there.
function gain(dough, weights, times, at) {
  const heights = rises(dough, at);
  let sum = 0;
  let time = 0;
  let height = 0;
  for (let m = 0; m < times.length; m++) {
    heights[m] = (1 + heights[m]) * dough.factors[m];
    if (isFinite(times[m])) {
      sum += weights[m];
      time += weights[m] * times[m];
      height += weights[m] * heights[m];
    }
  }
  time /= sum;
  height /= sum;
  let across = 0;
  let variance = 0;
  for (let m = 0; m < times.length; m++) {
    if (isFinite(times[m])) {
      const off = heights[m] - height;
      across += weights[m] / sum * (times[m] - time) * off;
      variance += weights[m] / sum * off * off;
    }
  }
  const noise = deviation(dough, height - 1);
  return across * across / (variance + noise * noise);
}
