// Weights and quantiles over the members of a forecast, as the library's live dough has them.
function firstAfter(grid, hours) {
  let after = 1;
  while (after < grid.length - 1 && grid[after] <= hours) { after++; }
  return after;
}
// The numbers of all members at one hour of the grid stand side by side.
// The slopes of the monotone cubic of Fritsch and Butland at the hours of the grid, once for all members.
function slopes(grid, curves, count) {
  const found = new Float64Array(curves.length);
  for (let i = 0; i < grid.length; i++) {
    for (let m = 0; m < count; m++) { found[i * count + m] = slope(grid, curves, count, i, m); }
  }
  return found;
}
function slope(grid, curves, count, i, m) {
  const secant = at => (curves[(at + 1) * count + m] - curves[at * count + m]) / (grid[at + 1] - grid[at]);
  const last = grid.length - 1;
  if (i === 0 || i === last) { return secant(Math.min(i, last - 1)); }
  const before = secant(i - 1);
  const after = secant(i);
  if (before * after <= 0) { return 0; }
  const wide = grid[i + 1] - grid[i];
  const wideBefore = grid[i] - grid[i - 1];
  const w0 = 2 * wide + wideBefore;
  const w1 = wide + 2 * wideBefore;
  return (w0 + w1) / (w0 / before + w1 / after);
}
// The highest of each member so far, at the hours of the grid.
function tops(curves, count) {
  const found = Float64Array.from(curves);
  for (let k = count; k < found.length; k++) { found[k] = Math.max(found[k - count], found[k]); }
  return found;
}
// What stands between two hours of the grid is the same for all members: what each end and its slope count.
function between(grid, hours, after) {
  const width = grid[after] - grid[after - 1];
  const s = (hours - grid[after - 1]) / width;
  const rest = 1 - s;
  return [rest * rest * (1 + 2 * s), rest * rest * s * width, s * s * (1 + 2 * rest), -s * s * rest * width];
}
// Into the numbers given, where there are any.
function rises(dough, hours, into) {
  const count = dough.factors.length;
  const after = firstAfter(dough.grid, hours);
  const part = between(dough.grid, hours, after);
  const left = part[0], leftSlope = part[1], right = part[2], rightSlope = part[3];
  const found = into || new Float64Array(count);
  for (let m = 0, k = after * count; m < count; m++, k++) {
    found[m] = left * dough.curves[k - count] + leftSlope * dough.slopes[k - count] + right * dough.curves[k] + rightSlope * dough.slopes[k];
  }
  return found;
}
function highest(dough, hours) {
  const most = rises(dough, hours);
  const until = (firstAfter(dough.grid, hours) - 1) * most.length;
  for (let m = 0; m < most.length; m++) { most[m] = Math.max(most[m], dough.tops[until + m]); }
  return most;
}
// When each member first has risen so far.
function hoursTo(dough, rise) {
  const count = dough.factors.length;
  const found = new Float64Array(count);
  for (let m = 0; m < count; m++) {
    let after = 1;
    while (after < dough.grid.length && dough.curves[after * count + m] < rise) { after++; }
    found[m] = after < dough.grid.length ? crossing(dough, after, m, rise) : Infinity;
  }
  return found;
}
function crossing(dough, after, m, rise) {
  const k = after * dough.factors.length + m;
  const before = k - dough.factors.length;
  let low = dough.grid[after - 1];
  let high = dough.grid[after];
  for (let halved = 0; halved < 12; halved++) { // of a step of some hours a few seconds are left
    const middle = (low + high) / 2;
    const part = between(dough.grid, middle, after);
    const there = part[0] * dough.curves[before] + part[1] * dough.slopes[before] + part[2] * dough.curves[k] + part[3] * dough.slopes[k];
    if (there < rise) { low = middle; } else { high = middle; }
  }
  return (low + high) / 2;
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
// The members in the order of their values, to a millionth: numbers alone are sorted soonest.
function sorted(values) {
  const count = values.length;
  const keys = new Float64Array(count);
  for (let m = 0; m < count; m++) { keys[m] = Math.min(Math.round(values[m] * 1e6), 1e12) * count + m; }
  keys.sort();
  const order = new Uint16Array(count);
  for (let i = 0; i < count; i++) { order[i] = keys[i] - Math.floor(keys[i] / count) * count; }
  return order;
}
// The order of the values, where it is known, spares sorting them for every set of weights.
function distribution(values, weights, order) {
  const all = order || sorted(values);
  const at = new Float64Array(all.length);
  const upTo = new Float64Array(all.length);
  let used = 0;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < all.length; i++) {
    const weight = weights[all[i]];
    if (weight > 0) {
      sum += weight;
      squares += weight * weight;
      at[used] = values[all[i]];
      upTo[used++] = sum;
    }
  }
  for (let i = 0; i < used; i++) { upTo[i] /= sum; }
  return { sorted: at.subarray(0, used), upTo: upTo, stretch: squares / sum / sum };
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
// When the jar of each member shows the rise at which to shape, or when another event comes; with the order.
function timesOf(dough, weights, event) {
  const at = quantile(distribution(event.members, weights, event.order), 0.5);
  if (event.key !== 'shape' || !isFinite(at)) { return { times: event.members, order: event.order }; }
  const times = hoursTo(dough, quantile(distribution(highest(dough, at), weights), 0.5));
  return { times: times, order: sorted(times) };
}
function whenIs(dough, weights, event) {
  const of = timesOf(dough, weights, event);
  return distribution(of.times, weights, of.order);
}
// When to look next for it.
function lookFor(dough, weights, event, last) {
  const of = timesOf(dough, weights, event);
  return nextLook(dough, weights, of.times, of.order, last);
}
// The hour at which one more reading narrows the times most, before the early one; NaN for now.
function nextLook(dough, weights, times, order, last) {
  const early = quantile(distribution(times, weights, order), 0.1);
  const first = last + 0.25;
  if (!isFinite(early) || !(early > first)) { return NaN; }
  const heights = new Float64Array(times.length);
  let best = first;
  let most = -1;
  for (let i = 0; i <= 24; i++) {
    const at = first + (early - first) * i / 24;
    const worth = gain(dough, weights, times, rises(dough, at, heights));
    if (worth > most) { most = worth; best = at; }
  }
  return best;
}
// What a reading takes off the variance of a time, by regression over the members that get there.
function gain(dough, weights, times, heights) {
  let sum = 0, time = 0, height = 0, across = 0, square = 0;
  for (let m = 0; m < times.length; m++) {
    if (times[m] < Infinity) {
      const weight = weights[m];
      const there = (1 + heights[m]) * dough.factors[m];
      sum += weight;
      time += weight * times[m];
      height += weight * there;
      across += weight * there * times[m];
      square += weight * there * there;
    }
  }
  time /= sum;
  height /= sum;
  const together = across / sum - time * height;
  const noise = deviation(dough, height - 1);
  return together * together / (square / sum - height * height + noise * noise);
}
