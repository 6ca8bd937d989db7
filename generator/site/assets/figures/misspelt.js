/* Which unit somebody meant who made one slip of the pen in its name. The words come from the contract. Twin: misspelt unit. */
(function () {
  'use strict';
  var UNITS = Swardbook.contract.units, own = Swardbook.own;

  /* Whether one slip (a sign too many, too few or wrong, or two that changed places) makes one word of the other; words as signs. */
  function oneSlip(one, other) {
    var shorter = Math.min(one.length, other.length), before = 0, after = 0;
    while (before < shorter && one[before] === other[before]) { before += 1; }
    while (after < shorter - before && one[one.length - 1 - after] === other[other.length - 1 - after]) { after += 1; }
    var left = one.slice(before, one.length - after), right = other.slice(before, other.length - after);
    return Math.max(left.length, right.length) <= 1 || left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0];
  }

  var known = null;
  function isWord(small) {
    known = known || new Set(Object.keys(UNITS.atoms).map(function (typed) { return typed.toLowerCase(); }));
    return known.has(small) || own(UNITS.ambiguous, small) || own(UNITS.not_taken, small);
  }

  function mended(part, whole) {
    var pieces = whole('count_and_word', part), word = Array.from(pieces[2]), small = pieces[2].toLowerCase();
    if (isWord(small) || word.length < UNITS.least_misspelt || word.length > Swardbook.contract.reading.longest) { return part; }
    var meant = new Set(Object.keys(UNITS.slips).filter(function (name) { return oneSlip(Array.from(small), Array.from(name)); })
      .map(function (name) { return UNITS.slips[name]; }));
    return meant.size === 1 ? pieces[1] + Array.from(meant)[0] : part;
  }

  /* A unit, squeezed, with its slips put right. whole: matches a pattern with a text. */
  Swardbook.misspelt = function (squeezed, whole) {
    return squeezed.split('/').map(function (part) { return mended(part, whole); }).join('/');
  };
})();
