/* A calculator turned round. The twin of generator/calculators/inversion.py: the same answers and the same sentences. */
(function () {
  'use strict';
  var DIGITS = 9, MOST_LISTED = 3;

  function limit(value) { return value === undefined ? null : value; }

  /* The result [SI] as a function of the input [SI]; null where it has no answer. */
  function response(spec, values, inputName, resultName) {
    var last = spec.results.map(function (result) { return result.name; }).indexOf(resultName);
    return function (si) {
      var known = Object.assign({}, values);
      known[inputName] = si;
      for (var i = 0; i <= last; i += 1) {
        try {
          known[spec.results[i].name] = Swardbook.formula.answer(spec.results[i].work, known);
        } catch (problem) {
          if (!problem.sentence) throw problem;
        }
      }
      return known[resultName] === undefined ? null : known[resultName];
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
      if (!problem.sentence) throw problem;
      return { problem: label + ': ' + problem.sentence };
    }
    var work = response(spec, values, asked.input, asked.result);

    function shown(si) { return C.show(si, asked.resultUnit); }
    function inputShown(si) { return C.show(si, asked.inputUnit); }

    /* To nine digits where that meets what is wanted as well. */
    function tidy(si, within) {
      if (input.whole) return si;
      var unit = Swardbook.quantity.unit(input.unit);
      var short = Number(((si - unit.offset) / unit.factor).toPrecision(DIGITS)) * unit.factor + unit.offset;
      var here = work(si), there = work(short);
      if (there === null) return si;
      if (within) return X.sideOf(there, target) === X.sideOf(here, target) ? short : si;
      return Math.abs(there - target) <= Math.max(Math.abs(here - target), 1e-12 * Math.abs(target)) ? short : si;
    }

    function chosen(met) {
      if (met.kind === 'point') return tidy((met.first + met.last) / 2, false);
      if (met.kind === 'leap') return tidy(met.before < 0 ? met.first : met.last, true);
      return tidy(met.before > 0 || (met.before < 0 && met.after <= 0) ? met.first : met.last, true);
    }

    function ofAStretch(met, si, high) {
      var largest = Math.abs(si - met.last) < Math.abs(si - met.first);
      var reach = !met.after && high === null ? inputShown(met.first) + ' up' : inputShown(met.first) + ' to ' + inputShown(met.last);
      return label + ': ' + shown(target) + ' for any value from ' + reach + '; the ' + (largest ? 'largest' : 'smallest') + ' is given.';
    }

    function ofALeap(met, si) {
      var rising = met.before < 0;
      var here = rising ? met.first : met.last, other = rising ? met.last : met.first;
      var beyond = input.whole ? inputShown(other) : 'a little ' + (rising ? 'more' : 'less');
      return "No value of '" + input.question + "' gives exactly " + shown(target) + ': ' + shown(work(here)) + ' with ' +
        inputShown(si) + ', ' + shown(work(other)) + ' with ' + beyond + '.';
    }

    function outOfReach(least, most) {
      var start = label + ' cannot be ' + shown(target) + ": whatever '" + input.question + "' is, it ";
      if (target < least) return start + 'never goes below ' + shown(least) + '.';
      if (target > most) return start + 'never goes above ' + shown(most) + '.';
      return start + 'jumps past that.';
    }

    function several(all) {
      var start = label + " rises and falls with '" + input.question + "', so ";
      if (all.length > MOST_LISTED) return start + 'too many values give ' + shown(target) + '; ask for another.';
      return start + 'more than one value gives ' + shown(target) + ': ' +
        all.map(function (met) { return inputShown(chosen(met)); }).join(' and ') + '.';
    }

    var above = limit(input.above), least = limit(input.at_least), high = limit(input.at_most);
    var low = above === null || (least !== null && least > above) ? least : above;
    var inUnits = Swardbook.quantity.unit(input.unit);
    var places = X.points(low, high, inUnits.factor, inUnits.offset, low !== null && low === above, Boolean(input.whole));
    if (!input.whole) places = X.withExtremes(work, places);
    var found = places.map(work).filter(function (value) { return value !== null; });
    if (!found.length) return { problem: label + ": no answer, whatever '" + input.question + "' is." };
    var smallest = Math.min.apply(null, found), greatest = Math.max.apply(null, found);
    if (greatest - smallest <= 1e-12 * Math.max(Math.abs(smallest), Math.abs(greatest))) {
      return { problem: label + " does not change with '" + input.question + "'." };
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

  window.Swardbook = window.Swardbook || {};
  Swardbook.solve = solve;
})();
