/* What a formula may call in the browser: the same problems under the same codes, the same rounding, the same order of sums. Sentences
   come from the contract. Twin: formula. */
(function () {
  "use strict";
  var C = Swardbook.contract.formula;

  function Problem(code, detail) {
    Swardbook.Problem.call(this, code, C.sentences[code] + (detail ? " (" + detail + ")" : "") + ".");
  }
  Problem.prototype = Object.create(Swardbook.Problem.prototype);
  Problem.prototype.constructor = Problem;

  function sure(result) {
    if (Number.isFinite(result)) { return result; }
    throw new Problem("too-large");
  }

  function given(values, name) {
    if (Swardbook.own(values, name)) { return values[name]; }
    throw new Problem("missing-value", name);
  }

  function number(value, name) {
    if (typeof value !== "number") { throw new Problem("wrong-kind"); }
    if (!Number.isFinite(value)) { throw new Problem("not-a-number", name); }
    return value;
  }

  // In a list of readings a name may also stand for one value beside each of them.
  function numberOrList(readings, name) {
    if (!Array.isArray(readings)) { return number(readings, name); }
    if (readings.length === 0) { throw new Problem("empty-list", name); }
    readings.forEach(function (reading) { number(reading, name); });
    return readings;
  }

  // Arithmetic reading by reading: `step` of one of each of the operands, which are lists or single numbers.
  function each(step, operands) {
    var lists = operands.filter(Array.isArray);
    if (lists.length === 0) { return step.apply(null, operands); }
    if (lists.some(function (one) { return one.length !== lists[0].length; })) { throw new Problem("lists-unequal"); }
    return lists[0].map(function (reading, i) {
      return step.apply(null, operands.map(function (one) { return Array.isArray(one) ? one[i] : one; }));
    });
  }

  function ofList(reduce) {
    return function (readings) {
      if (!Array.isArray(readings)) { throw new Problem("wrong-kind"); }
      return reduce(readings);
    };
  }

  // Values by their names, `v.area`, each checked as a compiled formula reads it.
  function reader(values, checked) {
    return new Proxy(values, { get: function (all, name) { return checked(given(all, name), name); } });
  }

  function answer(compiled, values) {
    return compiled(Swardbook.formula, reader(values, number), reader(values, numberOrList));
  }

  function divide(top, bottom) {
    if (bottom === 0) { throw new Problem("division-by-zero"); }
    return sure(top / bottom);
  }

  function power(base, exponent) {
    if (base === 0 && exponent < 0) { throw new Problem("division-by-zero"); }
    if (base < 0 && exponent !== Math.floor(exponent)) { throw new Problem("power-of-negative"); }
    return sure(Math.pow(base, exponent));
  }

  // Whole constant powers are multiplied out, so that both sides agree to the bit.
  function whole(base, exponent) {
    var product = 1;
    for (var i = 0; i < Math.abs(exponent); i += 1) { product *= base; }
    sure(product);
    return exponent < 0 ? divide(1, product) : product;
  }

  function nearest(x) {
    var below = Math.floor(Math.abs(x));
    var rounded = Math.abs(x) - below >= 0.5 ? below + 1 : below;
    return x < 0 ? -rounded : rounded;
  }

  function snapped(x) {
    var slack = Math.min(C.snap * Math.max(1, Math.abs(x)), C.widest_snap);
    return Math.abs(x - nearest(x)) <= slack ? nearest(x) : x;
  }

  function total(readings) {
    return readings.reduce(function (sum, reading) { return sum + reading; }, 0);
  }

  function sum(readings) { return sure(total(readings)); }
  function mean(readings) { return sure(total(readings) / readings.length); }

  function least(readings) {
    return readings.reduce(function (a, b) { return b < a ? b : a; });
  }

  function greatest(readings) {
    return readings.reduce(function (a, b) { return b > a ? b : a; });
  }

  // Mean of the lowest: one in `parts` of the readings, halves rounded up.
  function lowestMean(parts) {
    return function (readings) {
      var sorted = readings.slice().sort(function (a, b) { return a < b ? -1 : a > b ? 1 : 0; });
      return mean(sorted.slice(0, Math.max(1, Math.floor((readings.length + parts / 2) / parts))));
    };
  }

  function meanDeviation(readings) {
    var middle = mean(readings);
    return mean(readings.map(function (reading) { return Math.abs(reading - middle); }));
  }

  function trapezoidalSum(readings) {
    return sure(total(readings) - (readings[0] + readings[readings.length - 1]) / 2);
  }

  function simpsonSum(readings) {
    var count = readings.length;
    var whole = count % 2 ? count - 1 : count - 2;
    var area = 0;
    for (var start = 0; start < whole; start += 2) {
      area += (readings[start] + 4 * readings[start + 1] + readings[start + 2]) / 3;
    }
    return sure(count % 2 ? area : area + (readings[count - 2] + readings[count - 1]) / 2);
  }

  // Two readings each, along and across, as corners measured from the first.
  function fromFirst(corners) {
    if (corners.length % 2) { throw new Problem("corners-unpaired"); }
    var points = [];
    for (var i = 0; i < corners.length; i += 2) { points.push([corners[i] - corners[0], corners[i + 1] - corners[1]]); }
    return points;
  }

  function polygonArea(corners) {
    var points = fromFirst(corners), twice = 0;
    for (var i = 1; i < points.length - 1; i += 1) { twice += points[i][0] * points[i + 1][1] - points[i + 1][0] * points[i][1]; }
    return sure(Math.abs(twice) / 2);
  }

  function turn(side, point, span) {
    var start = side[0], end = side[1], slack = C.snap * span * span;
    var cross = (end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0]);
    return cross > slack ? 1 : cross < -slack ? -1 : 0;
  }

  function foldsBack(first, second, span) {
    var start = first[0], middle = first[1], end = second[1];
    var ahead = (middle[0] - start[0]) * (end[0] - middle[0]) + (middle[1] - start[1]) * (end[1] - middle[1]);
    return turn(first, end, span) === 0 && ahead < 0;
  }

  function beside(side, point, span) {
    var slack = C.snap * span;
    return [0, 1].every(function (axis) {
      var ends = [side[0][axis], side[1][axis]];
      return least(ends) - slack <= point[axis] && point[axis] <= greatest(ends) + slack;
    });
  }

  function meet(one, other, span) {
    var ends = [[one, other[0]], [one, other[1]], [other, one[0]], [other, one[1]]];
    var turns = ends.map(function (end) { return turn(end[0], end[1], span); });
    if (turns[0] * turns[1] < 0 && turns[2] * turns[3] < 0) { return true; }
    return ends.some(function (end, i) { return turns[i] === 0 && beside(end[0], end[1], span); });
  }

  // Whether sides meet anywhere but at the corner between them: 1 or 0. A corner given twice running is one.
  function sidesCross(corners) {
    var points = fromFirst(corners);
    var ring = points.filter(function (point, i) {
      var before = points[(i || points.length) - 1];
      return point[0] !== before[0] || point[1] !== before[1];
    });
    var span = ring.reduce(function (most, point) { return greatest([most, Math.abs(point[0]), Math.abs(point[1])]); }, 0);
    var sides = ring.map(function (point, i) { return [point, ring[(i + 1) % ring.length]]; });
    if (sides.length < 3) { return 0; }
    return sides.some(function (side, later) {
      return sides.slice(0, later).some(function (other, earlier) {
        if (later - earlier === 1) { return foldsBack(other, side, span); }
        return later - earlier === sides.length - 1 ? foldsBack(side, other, span) : meet(other, side, span);
      });
    }) ? 1 : 0;
  }

  function root(x) {
    if (x < 0) { throw new Problem("negative-root"); }
    return Math.sqrt(x);
  }

  function logarithm(x) {
    if (x <= 0) { throw new Problem("log-of-zero-or-less"); }
    return Math.log(x);
  }

  function arcCosine(x) {
    if (x < -1 || x > 1) { throw new Problem("angle-outside"); }
    return Math.acos(x);
  }

  var COMPARE = {
    "<": function (a, b) { return a < b; },
    "<=": function (a, b) { return a <= b; },
    ">": function (a, b) { return a > b; },
    ">=": function (a, b) { return a >= b; },
    "===": function (a, b) { return a === b; },
    "!==": function (a, b) { return a !== b; }
  };

  function ordered(signs, parts) {
    return signs.every(function (sign, i) { return COMPARE[sign](parts[i], parts[i + 1]); });
  }

  Swardbook.formula = {
    Problem: Problem,
    answer: answer,
    each: each,
    sure: sure,
    divide: divide,
    power: power,
    whole: whole,
    ordered: ordered,
    min: ofList(least),
    max: ofList(greatest),
    sum: ofList(sum),
    mean: ofList(mean),
    count: ofList(function (readings) { return readings.length; }),
    lowestQuarterMean: ofList(lowestMean(4)),
    lowestHalfMean: ofList(lowestMean(2)),
    meanDeviation: ofList(meanDeviation),
    trapezoidalSum: ofList(trapezoidalSum),
    simpsonSum: ofList(simpsonSum),
    polygonArea: ofList(polygonArea),
    sidesCross: ofList(sidesCross),
    ceil: function (x) { return Math.ceil(snapped(x)); },
    floor: function (x) { return Math.floor(snapped(x)); },
    round: nearest,
    sqrt: root,
    exp: function (x) { return sure(Math.exp(x)); },
    log: logarithm,
    abs: Math.abs,
    sin: Math.sin,
    cos: Math.cos,
    tan: Math.tan,
    acos: arcCosine
  };
})();
