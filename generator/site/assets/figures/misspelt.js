/* Which unit somebody meant who made one slip of the pen in its name. The words come from the contract. Twin: misspelt unit. */
(function () {
  'use strict';
  var UNITS = Swardbook.contract.units;

  /* Whether one slip (a sign too many, too few or wrong, or two that changed places) makes one word of the other; words as signs. */
  function oneSlip(one, other) {
    var shorter = Math.min(one.length, other.length), before = 0, after = 0;
    while (before < shorter && one[before] === other[before]) { before += 1; }
    while (after < shorter - before && one[one.length - 1 - after] === other[other.length - 1 - after]) { after += 1; }
    var left = one.slice(before, one.length - after), right = other.slice(before, other.length - after);
    return Math.max(left.length, right.length) <= 1 || left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0];
  }

  /* Every word that is a part of a unit, in lower case, and what it is; for those that are refused, one word of all for which the same
     is to be written. */
  var words = null, names = null;
  function learn(whole) {
    words = new Map();
    Object.keys(UNITS.atoms).forEach(function (typed) { words.set(typed.toLowerCase(), UNITS.atoms[typed]); });
    var refused = Object.assign({}, UNITS.ambiguous, UNITS.not_taken);
    Object.keys(refused).forEach(function (word) {
      words.set(word, Object.keys(refused).find(function (other) { return refused[other] === refused[word]; }));
    });
    names = Array.from(words).filter(function (pair) { return whole('spelt_out', pair[0]) && whole('one_part', pair[1]); })
      .map(function (pair) { return { signs: Array.from(pair[0]), part: pair[1] }; });
  }

  function mended(part, whole) {
    var pieces = whole('count_and_word', part), small = pieces[2].toLowerCase(), signs = Array.from(small);
    if (words.has(small) || Array.from(pieces[2]).length > Swardbook.contract.reading.longest) { return part; }
    var meant = new Set(names.filter(function (name) { return oneSlip(signs, name.signs); }).map(function (name) { return name.part; }));
    return meant.size === 1 ? pieces[1] + Array.from(meant)[0] : part;
  }

  /* A unit, squeezed, with its slips put right. whole: matches a pattern with a text. */
  Swardbook.misspelt = function (squeezed, whole) {
    if (!words) { learn(whole); }
    return squeezed.split('/').map(function (part) { return mended(part, whole); }).join('/');
  };
})();
