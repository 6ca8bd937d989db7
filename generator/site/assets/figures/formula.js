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

  function lowestQuarterMean(readings) {
    var sorted = readings.slice().sort(function (a, b) { return a < b ? -1 : a > b ? 1 : 0; });
    return mean(sorted.slice(0, Math.max(1, Math.floor((readings.length + 2) / 4))));
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

  function polygonArea(corners) {
    if (corners.length % 2) { throw new Problem("corners-unpaired"); }
    function along(corner) { return corners[2 * corner] - corners[0]; }
    function across(corner) { return corners[2 * corner + 1] - corners[1]; }
    var twice = 0;
    for (var corner = 1; corner < corners.length / 2 - 1; corner += 1) {
      twice += along(corner) * across(corner + 1) - along(corner + 1) * across(corner);
    }
    return sure(Math.abs(twice) / 2);
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
    lowestQuarterMean: ofList(lowestQuarterMean),
    meanDeviation: ofList(meanDeviation),
    trapezoidalSum: ofList(trapezoidalSum),
    simpsonSum: ofList(simpsonSum),
    polygonArea: ofList(polygonArea),
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
