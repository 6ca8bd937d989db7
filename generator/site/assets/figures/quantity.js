/* A quantity as a person types it, read to SI, and an SI value printed back. Patterns, limits, sentences and the list of units come from
   the contract (generator/units/typed_text.py). Twin: quantity. */
(function () {
  'use strict';
  var R = Swardbook.contract.reading, UNITS = Swardbook.contract.units, own = Swardbook.own;
  var lookup = null, wholes = {};

  function refusal(code, values, sentence) {
    return new Swardbook.Problem(code, Swardbook.filled(R.sentences[sentence || code], values || {}));
  }

  /* The match of a pattern with the whole of a text, or null. */
  function whole(name, text) {
    wholes[name] = wholes[name] || new RegExp('^(?:' + R.patterns[name] + ')$');
    return wholes[name].exec(text);
  }
  function every(name) { return new RegExp(R.patterns[name], 'g'); }
  function within(name, text) { return every(name).test(text); }
  function signs(text) { return Array.from(text); }
  function trimmed(text) { return text.replace(/^[ \n]+|[ \n]+$/g, ''); }
  function each(table, text) { return signs(text).map(function (sign) { return own(table, sign) ? table[sign] : sign; }).join(''); }

  function record(spelling) {
    var row = UNITS.units[spelling];
    return { spelling: spelling, factor: row[1], offset: row[2], dimension: row[3], kind: row[4], system: row[5] };
  }

  function tables() {
    if (lookup) { return lookup; }
    lookup = { relaxed: new Map(), whole: new Map(), squeezes: R.squeezes.map(function (pair) { return [new RegExp(pair[0], 'g'), pair[1]]; }) };
    Object.keys(UNITS.atoms).forEach(function (typed) { lookup.relaxed.set(typed.toLowerCase(), UNITS.atoms[typed]); });
    Object.keys(UNITS.units).forEach(function (spelling) { lookup.whole.set(UNITS.units[spelling][0], spelling); });
    return lookup;
  }

  function squeezed(spelling) {
    return tables().squeezes.reduce(function (text, pair) { return text.replace(pair[0], pair[1]); }, each(R.signs, spelling));
  }

  function atom(typed) { return own(UNITS.atoms, typed) ? UNITS.atoms[typed] : tables().relaxed.get(typed.toLowerCase()); }
  function inWhole(text) { return tables().whole.has(text) ? record(tables().whole.get(text)) : null; }

  /* One part of a unit, squeezed: '100m2' of 'kg/100m2'. text: the unit as it was typed. */
  function part(typed, text, american) {
    var pieces = whole('count_and_word', typed), word = pieces[2], small = word.toLowerCase();
    if (american && own(UNITS.american, small)) { word = UNITS.american[small]; }
    else if (own(UNITS.ambiguous, small)) { throw refusal('ambiguous-unit', { text: text, instead: UNITS.ambiguous[small] }); }
    else if (own(UNITS.not_taken, small)) { throw refusal('unknown-unit', { text: text, instead: UNITS.not_taken[small] }, 'unit-not-taken'); }
    return pieces[1] + (atom(squeezed(word)) || word);
  }

  /* Capitals that make another unit of it. */
  function asTyped(word, text) {
    if (own(UNITS.as_typed, word)) { throw refusal('ambiguous-unit', { text: text, instead: UNITS.as_typed[word] }); }
  }

  /* A unit of the list, squeezed; null for one that is not on it. typed: as it was typed, for a refusal. */
  function listed(text, typed, american) {
    var found = inWhole(text);
    if (found) { return found; }
    text.split('/').forEach(function (one) { asTyped(whole('count_and_word', one)[2], typed); });
    found = inWhole(atom(text) || '?');
    if (found) { return found; }
    var parts = text.split('/').map(function (one) { return part(one, typed, american); }).join('/');
    return inWhole(parts) || inWhole(atom(parts) || '?');
  }

  /* wanted: what it has to measure, if that is known; then a slip of the pen is told. */
  function unit(spelling, american, wanted) {
    var text = squeezed(spelling), found = listed(text, spelling, american);
    if (found) { return found; }
    var mended = Swardbook.misspelt(text, whole), near = mended !== text && listed(squeezed(mended), spelling, american);
    if (near && wanted && fits(near, wanted)) { throw refusal('unknown-unit', { text: spelling, near: near.spelling }, 'misspelt-unit'); }
    throw refusal('unknown-unit', { text: spelling, examples: wanted ? examples(wanted) : '' });
  }

  function systemOf(spelling, american) {
    try { return unit(spelling, american).system; } catch (problem) { return Swardbook.sentenceOf(problem) && null; }
  }

  function withPlainNumbers(text) {
    return R.tidies.reduce(function (all, pair) { return all.replace(new RegExp(pair[0], 'g'), pair[1]); }, text);
  }
  function plain(text) {
    return withPlainNumbers(each(R.fractions, text)).replace(every('blanks_and_lines'), ' ').replace(/^ +| +$/g, '');
  }

  function decimal(digits, american) {
    var joined = digits.replace(/,/g, ''), pointed = digits.replace(/,/g, '.');
    if (whole('one_point', digits)) { return digits; }
    if (whole('thousands_or_decimals', digits)) {
      if (american) { return joined; }
      throw refusal('ambiguous-number', { text: digits, joined: joined, pointed: pointed }, 'comma');
    }
    if (whole('comma_groups', digits)) { return joined; }
    if (whole('point_groups', digits)) { return digits.replace(/\./g, '').replace(',', '.'); }
    if (digits.split(',').length === 2 && whole('one_point', pointed)) { return pointed; }
    throw refusal('not-a-number', { text: digits });
  }

  /* found: sign, whole, top and bottom of a fraction, digits in groups, plain digits, exponent. */
  function number(found, text, american) {
    var value;
    if (found[4]) {
      if (Number(found[4]) === 0) { throw refusal('division-by-zero', { text: text }); }
      value = Number(found[2] || 0) + Number(found[3]) / Number(found[4]);
    } else if (found[5]) { value = Number(found[5].replace(/ /g, '').replace(',', '.')); }
    else { value = Number(decimal(found[6], american) + (found[7] || '')); }
    if (!Number.isFinite(value)) { throw refusal('too-large', { text: text }); }
    return found[1] === '-' ? -value : value;
  }

  function split(text, wanted) {
    if (!text) { throw refusal('empty'); }
    if (signs(text).length > R.longest) { throw refusal('too-long'); }
    var found = whole('quantity', text);
    if (!found) { throw refusal('not-a-number', { text: text }, 'not-a-quantity'); }
    var system = found[8] ? systemOf(found[8], wanted.system === 'us') : wanted.system;
    if (whole('range', found[8])) { throw refusal('not-a-number', { text: text }, 'range'); }
    if (whole('clock', found[8])) {
      var example = wanted.spelling === '1' ? R.number_example : R.number_example + ' ' + wanted.spelling;
      throw refusal('not-a-number', { text: text, example: wanted.kind === 'a time' ? R.clock_example : example }, 'clock');
    }
    var value = number(found, text, system === 'us');
    if (/ 100$/.test(found[5] || '') && systemOf('100 ' + found[8]) !== null) { throw refusal('ambiguous-number', { text: text }, 'hundred'); }
    return { value: value, unit: found[8] };
  }

  function fits(found, wanted) {
    if (found.dimension !== wanted.dimension) { return false; }
    if (found.dimension !== '1' || found.spelling === wanted.spelling) { return true; }
    if (wanted.kind === 'a plain number') { return found.kind !== 'an angle'; }
    return found.kind === wanted.kind && found.kind !== 'a count';
  }

  function examples(wanted) {
    if (wanted.spelling === '1') { return R.no_unit; }
    var usual = Object.keys(UNITS.units).map(record).filter(function (known) {
      return known.kind === wanted.kind && fits(known, wanted);
    }).slice(0, R.examples).map(function (known) { return known.spelling; });
    return Array.from(new Set([wanted.spelling].concat(usual))).join(', ');
  }

  function inSi(value, found, wanted, text) {
    if (!fits(found, wanted)) {
      throw refusal('wrong-dimension', { text: text, kind: found.kind, wanted: wanted.kind, examples: examples(wanted) });
    }
    var si = value * found.factor + found.offset;
    if (!(Math.abs(si) < R.largest)) { throw refusal('too-large', { text: text }); }
    return si;
  }

  function rectangle(text, wanted) {
    var sides = text.split(every('sides'));
    if (wanted.dimension !== record('m2').dimension || sides.length !== 2) { return null; }
    if (!whole('side', sides[0]) || !(whole('side', sides[1]) || !sides[1] && whole('bare', sides[0]))) { return null; }
    var sideUnit = record(wanted.system === 'us' ? 'ft' : 'm'), width = split(sides[1], sideUnit);
    var widthUnit = width.unit ? unit(width.unit, wanted.system === 'us', sideUnit) : sideUnit;
    var across = inSi(width.value, widthUnit, sideUnit, sides[1]);
    return readAs(sides[0], widthUnit) * across;
  }

  function readAs(text, wanted) {
    text = plain(text);
    var hemisphere = wanted.kind === 'an angle' && whole('hemisphere', text);
    if (hemisphere) { return readAs(hemisphere[1], wanted) * (hemisphere[2] === 'S' ? -1 : 1); }
    var area = rectangle(text, wanted);
    if (area !== null) { return area; }
    var american = wanted.system === 'us', typed = split(text, wanted), steps = whole('two_steps', each(R.quotes, typed.unit));
    if (!steps) { return inSi(typed.value, typed.unit ? unit(typed.unit, american, wanted) : wanted, wanted, text); }
    var smaller = split(steps[2], wanted), largerUnit = unit(steps[1]), spelling = smaller.unit;
    if (whole('hours', steps[1]) && whole('minutes', spelling)) { spelling = 'min'; }
    if (!spelling) { throw refusal('unknown-unit', { text: text }, 'no-second-unit'); }
    var smallerUnit = unit(spelling, american, wanted);
    var rest = inSi(smaller.value, smallerUnit, wanted, text), larger = inSi(typed.value, largerUnit, wanted, text);
    if (smallerUnit.factor >= largerUnit.factor) { throw refusal('not-a-number', { text: text }, 'two-alike'); }
    return typed.value < 0 ? larger - rest : larger + rest;
  }

  function separated(text, spacesSeparate) {
    var mixed = within('tight_comma', text) && within('loose_comma', text);
    text = trimmed(text);
    var semicolons = text.indexOf(';') >= 0;
    if (!semicolons && (mixed || whole('comma_groups', text) || whole('thousands_or_decimals', text))) { throw refusal('ambiguous-number', {}, 'comma-in-list'); }
    var pieces = text.split(every(semicolons ? 'between_with_semicolons' : 'between'));
    if (spacesSeparate && whole('spaced_thousands', text)) { throw refusal('ambiguous-number', { text: text }, 'hundred'); }
    if (spacesSeparate) { pieces = [].concat.apply([], pieces.map(function (piece) { return piece.split(' '); })); }
    var readings = pieces.map(function (piece) { return piece.replace(/^ +| +$/g, ''); }).filter(function (piece) { return /[^ ,]/.test(piece); });
    if (!readings.length) { throw refusal('empty', {}, 'no-readings'); }
    return readings;
  }

  function bare(reading, unitOfAll) {
    var typed = split(reading, unitOfAll);
    if (typed.unit) { throw refusal('not-a-number', { text: reading }); }
    return inSi(typed.value, unitOfAll, unitOfAll, reading);
  }

  function readList(given, defaultUnit) {
    var wanted = unit(defaultUnit), text = String(given);
    if (signs(text).length > R.longest_list) { throw refusal('too-long', {}, 'list-too-long'); }
    text = trimmed(withPlainNumbers(text).replace(every('blanks'), ' ').replace(every('corner'), '$1; $2;'));
    if (!text) { throw refusal('empty', {}, 'no-readings'); }
    var pieces = whole('readings_and_unit', text), oneUnit = pieces[2] && !within('more_than_a_unit', pieces[2]);
    var readings = separated(oneUnit ? pieces[1] : text, oneUnit || !pieces[2]);
    var unitOfAll = oneUnit ? unit(plain(pieces[2]), wanted.system === 'us', wanted) : wanted;
    inSi(0, unitOfAll, wanted, signs(text).slice(0, R.longest).join(''));
    return readings.map(function (reading) { return oneUnit ? bare(reading, unitOfAll) : readAs(reading, wanted); });
  }

  function figures(value, significantFigures) {
    if (value === 0) { return '0'; }
    var pieces = Math.abs(value).toExponential(significantFigures - 1).split('e');
    var digits = pieces[0].replace('.', ''), point = Number(pieces[1]) + 1;
    if (point <= 0) { digits = '0'.repeat(1 - point) + digits; point = 1; }
    digits = digits.padEnd(point, '0');
    var text = digits.slice(0, point) + '.' + digits.slice(point);
    return (value < 0 ? '-' : '') + text.replace(/0+$/, '').replace(/\.$/, '');
  }

  function show(si, spelling, significantFigures, withUnit) {
    var wanted = unit(spelling), value = (si - wanted.offset) / wanted.factor;
    if (!Number.isFinite(value)) { throw refusal('too-large', {}, 'nothing-to-show'); }
    var text = figures(value, significantFigures || 3);
    return withUnit === false || wanted.spelling === '1' ? text : text + ' ' + wanted.spelling;
  }

  Swardbook.quantity = {
    unit: function (spelling) { return unit(spelling); }, read: function (text, defaultUnit) { return readAs(String(text), unit(defaultUnit)); }, readList: readList, show: show,
    /* Whether a text is a number, or several, without a unit. */
    isBare: function (text) { return Boolean(whole('bare', text)); }
  };
})();
