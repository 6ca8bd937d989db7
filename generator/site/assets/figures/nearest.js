/* The name that somebody meant, most likely: what `difflib.get_close_matches` of Python finds, so that page and command line give the
   same hint. Source: Ratcliff and Obershelp's pattern matching, as the documentation of Python's difflib tells it. Twin: nearest. */
(function () {
  'use strict';

  /* The longest run of signs that stands in both, within these bounds: {one, other, size}; the first of several. places: where each
     sign of `other` stands in it. */
  function longestRun(one, places, oneFrom, oneTo, otherFrom, otherTo) {
    var best = { one: oneFrom, other: otherFrom, size: 0 }, before = new Map();
    for (var i = oneFrom; i < oneTo; i += 1) {
      var now = new Map();
      (places.get(one[i]) || []).forEach(function (j) {
        if (j < otherFrom || j >= otherTo) { return; }
        var size = (before.get(j - 1) || 0) + 1;
        now.set(j, size);
        if (size > best.size) { best = { one: i - size + 1, other: j - size + 1, size: size }; }
      });
      before = now;
    }
    return best;
  }

  function alike(one, places, oneFrom, oneTo, otherFrom, otherTo) {
    var run = longestRun(one, places, oneFrom, oneTo, otherFrom, otherTo);
    return !run.size ? 0 : run.size + alike(one, places, oneFrom, run.one, otherFrom, run.other) +
      alike(one, places, run.one + run.size, oneTo, run.other + run.size, otherTo);
  }

  /* The nearest of `known`, or null where none is near. */
  Swardbook.nearest = function (word, known) {
    var near = Swardbook.contract.near, best = null, most = 0;
    var other = Array.from(word).slice(0, near.longest), places = new Map();
    other.forEach(function (sign, at) { places.set(sign, (places.get(sign) || []).concat([at])); });
    known.forEach(function (name) {
      var one = Array.from(name), all = one.length + other.length;
      var ratio = all ? 2 * alike(one, places, 0, one.length, 0, other.length) / all : 1;
      if (ratio >= near.least_alike && (ratio > most || ratio === most && name > best)) { best = name; most = ratio; }
    });
    return best;
  };
})();
