/* A calculator turned round: the same answers as in Python, in the sentences of the contract. Twin: turned round. */
(function () {
  'use strict';
  var K = Swardbook.contract.calculator;

  function limit(value) { return value === undefined ? null : value; }

  /* The result [SI] as a function of the input [SI]; null where it has no answer. */
  function response(spec, values, inputName, resultName) {
    var last = spec.results.map(function (result) { return result.name; }).indexOf(resultName), chain = { results: spec.results.slice(0, last + 1) };
    return function (si) {
      var given = Object.assign({}, values);
      given[inputName] = si;
      var found = Swardbook.calculator.answers(chain, given)[resultName];
      return found === undefined ? null : found;
    };
  }

  /* asked: {result, text, unit (of a bare number), input, resultUnit and inputUnit (to speak in)}; values: what is given [SI].
     Gives {si, remark} or {problem}. */
  function solve(spec, values, asked) {
    var C = Swardbook.calculator, X = Swardbook.crossing;
    var input = spec.inputs.filter(function (each) { return each.name === asked.input; })[0];
    var label = spec.results.filter(function (each) { return each.name === asked.result; })[0].label;
    var target;
    try {
      target = Swardbook.quantity.read(asked.text, asked.unit);
    } catch (problem) {
      return { problem: Swardbook.filled(K.sentences.unreadable, { label: label, why: Swardbook.sentenceOf(problem) }) };
    }
    var work = response(spec, values, asked.input, asked.result);

    function shown(si) { return C.show(si, asked.resultUnit); }
    function inputShown(si) { return C.show(si, asked.inputUnit); }

    /* To nine digits where that meets what is wanted as well. */
    function tidy(si, within) {
      if (input.whole) return si;
      var unit = Swardbook.quantity.unit(input.unit);
      var short = Number(((si - unit.offset) / unit.factor).toPrecision(K.digits)) * unit.factor + unit.offset;
      var here = work(si), there = work(short);
      if (there === null) return si;
      if (within) return X.sideOf(there, target) === X.sideOf(here, target) ? short : si;
      return Math.abs(there - target) <= Math.max(Math.abs(here - target), K.search.same * Math.abs(target)) ? short : si;
    }

    function chosen(met) {
      if (met.kind === 'point') return tidy((met.first + met.last) / 2, false);
      if (met.kind === 'leap') return tidy(met.before < 0 ? met.first : met.last, true);
      return tidy(met.before > 0 || (met.before < 0 && met.after <= 0) ? met.first : met.last, true);
    }

    function said(name, values) {
      return Swardbook.filled(K.sentences[name], Object.assign({ label: label, question: input.question, wanted: shown(target) }, values));
    }

    function ofAStretch(met, si, high) {
      return said(!met.after && high === null ? 'open-stretch' : 'stretch', {
        first: inputShown(met.first), last: inputShown(met.last), which: Math.abs(si - met.last) < Math.abs(si - met.first) ? 'largest' : 'smallest'
      });
    }

    function ofALeap(met, si) {
      var rising = met.before < 0, here = rising ? met.first : met.last, other = rising ? met.last : met.first;
      return said('leap', {
        near: shown(work(here)), given: inputShown(si), far: shown(work(other)), other: input.whole ? inputShown(other) : K.sentences[rising ? 'more' : 'less']
      });
    }

    function outOfReach(least, most) {
      if (target < least) return said('below', { limit: shown(least) });
      return target > most ? said('beyond', { limit: shown(most) }) : said('jumps');
    }

    function several(all) {
      if (all.length > K.most_listed) return said('too-many');
      return said('several', { listed: all.map(function (met) { return inputShown(chosen(met)); }).join(' and ') });
    }

    var above = limit(input.above), least = limit(input.at_least), high = limit(input.at_most);
    var low = above === null || (least !== null && least > above) ? least : above;
    var inUnits = Swardbook.quantity.unit(input.unit);
    var places = X.points(low, high, inUnits.factor, inUnits.offset, low !== null && low === above, Boolean(input.whole));
    if (!input.whole) places = X.withExtremes(work, places);
    var found = places.map(work).filter(function (value) { return value !== null; });
    if (!found.length) return { problem: said('never') };
    var smallest = Math.min.apply(null, found), greatest = Math.max.apply(null, found);
    if (greatest - smallest <= K.search.same * Math.max(Math.abs(smallest), Math.abs(greatest))) {
      return { problem: said('same') };
    }
    var all = X.meetings(work, places, target, Boolean(input.whole));
    if (!all.length) {
      var end = low === null ? null : work(low);
      return { problem: outOfReach(end === null ? smallest : Math.min(smallest, end), end === null ? greatest : Math.max(greatest, end)) };
    }
    if (all.length > 1) return { problem: several(all) };
    var si = chosen(all[0]);
    if (all[0].kind === 'point') return { si: si, remark: null };
    return { si: si, remark: all[0].kind === 'leap' ? ofALeap(all[0], si) : ofAStretch(all[0], si, high) };
  }

  Swardbook.solve = solve;
})();
