/* Where a function of one number meets a wanted value: the same places to look at and the same halving as in Python. Twin: root search. */
(function () {
  'use strict';
  var S = Swardbook.contract.calculator.search;

  function points(low, high, size, zero, lowOpen, whole) {
    var found = [];
    if (low !== null && !lowOpen) found.push(low);
    if (high !== null) found.push(high);
    if (low === null && high === null) found.push(zero);
    for (var step = S.steps_a_decade * S.first_decade; step <= S.steps_a_decade * S.last_decade; step += 1) {
      var away = size * Math.pow(10, step / S.steps_a_decade);
      if (low !== null) found.push(low + away);
      if (high !== null) found.push(high - away);
      if (low === null && high === null) found.push(zero + away, zero - away);
    }
    if (low !== null && high !== null) {
      for (var even = 1; even < S.even_steps; even += 1) found.push(low + (high - low) * even / S.even_steps);
    }
    if (whole) found = found.map(Math.floor);
    return inOrder(found.filter(function (each) {
      return (low === null || each > low || (each === low && !lowOpen)) && (high === null || each <= high);
    }));
  }

  function inOrder(places) {
    return places.sort(function (a, b) { return a - b; }).filter(function (each, i, all) { return i === 0 || each !== all[i - 1]; });
  }

  function extreme(work, low, high, sign) {
    function height(place) {
      var value = work(place);
      return value === null ? -Infinity : sign * value;
    }
    for (var i = 0; i < S.thirds; i += 1) {
      var third = (high - low) / 3;
      if (height(low + third) < height(high - third)) low += third; else high -= third;
    }
    return (low + high) / 2;
  }

  /* A peak may lie between two places. */
  function withExtremes(work, places) {
    var found = places.slice(), known = [];
    places.forEach(function (place) {
      var value = work(place);
      if (value !== null) known.push({ at: place, value: value });
    });
    [1, -1].forEach(function (sign) {
      var at = 0;
      known.forEach(function (each, i) { if (sign * each.value > sign * known[at].value) at = i; });
      if (at > 0 && at < known.length - 1) found.push(extreme(work, known[at - 1].at, known[at + 1].at, sign));
    });
    return inOrder(found);
  }

  function sideOf(value, wanted) {
    if (value === null) return null;
    return Math.abs(value - wanted) <= S.same * Math.abs(wanted) ? 0 : value < wanted ? -1 : 1;
  }

  function halve(isNear, near, far, whole) {
    for (var i = 0; i < S.halvings; i += 1) {
      var middle = whole ? Math.floor((near + far) / 2) : (near + far) / 2;
      if (middle <= near || middle >= far) break;
      if (isNear(middle)) near = middle; else far = middle;
    }
    return [near, far];
  }

  /* Every meeting: {first, last, before, after, kind}, kind point, stretch or leap. */
  function meetings(work, places, wanted, whole) {
    var found = [], off = null, met = [];

    function side(place) { return sideOf(work(place), wanted); }

    function stretch(near, first, last, beyond) {
      if (near) first = halve(function (place) { return side(place) !== 0; }, near.at, first, whole)[1];
      if (beyond) last = halve(function (place) { return side(place) === 0; }, last, beyond.at, whole)[0];
      var narrow = last - first <= S.narrow * Math.max(Math.abs(first), Math.abs(last));
      return { first: first, last: last, before: near ? near.side : 0, after: beyond ? beyond.side : 0, kind: narrow ? 'point' : 'stretch' };
    }

    function between(near, beyond) {
      var ends = halve(function (place) { return side(place) === near.side; }, near.at, beyond.at, whole);
      var there = work(ends[1]);
      if (there === null) return;
      if (side(ends[1]) === 0) { found.push(stretch({ at: ends[0], side: near.side }, ends[1], ends[1], beyond)); return; }
      var about = Math.max(Math.abs(work(near.at)), Math.abs(work(beyond.at)));
      var leap = Math.abs(work(ends[0]) - there);
      if (leap > S.pole * about) return;
      found.push({ first: ends[0], last: ends[1], before: near.side, after: beyond.side, kind: leap <= S.continuous * about ? 'point' : 'leap' });
    }

    places.forEach(function (place) {
      var here = side(place);
      if (here === 0) { met.push(place); return; }
      var next = here ? { at: place, side: here } : null;
      if (met.length) found.push(stretch(off, met[0], met[met.length - 1], next));
      else if (off && next && off.side !== next.side) between(off, next);
      off = next;
      met = [];
    });
    if (met.length) found.push(stretch(off, met[0], met[met.length - 1], null));
    return found;
  }

  Swardbook.crossing = { points: points, withExtremes: withExtremes, meetings: meetings, sideOf: sideOf };
})();
