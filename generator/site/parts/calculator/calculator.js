/* Runs a calculator while its reader types: the same rounding as in Python, and limits and sentences of the contract. Twin: calculator. */
(function () {
  'use strict';
  var K = Swardbook.contract.calculator;

  function tidy(value) { return Number(value.toPrecision(12)); }

  /* A number as it can be measured out: at most `decimals`, but never fewer than two digits that count. */
  function figures(value, decimals) {
    if (!value) return '0';
    var parts = Math.abs(value).toExponential().split('e');
    var digits = parts[0].replace('.', '');
    var power = Number(parts[1]);
    var places = Math.max((decimals === null ? 2 : 1) - power, decimals || 0, 0);
    if (decimals !== null && Number.isInteger(value)) places = 0;
    var keep = power + 1 + places;
    var kept = BigInt(digits.slice(0, Math.max(keep, 0)).padEnd(Math.max(keep, 0), '0') || '0');
    if (keep >= 0 && digits.charAt(keep) >= '5') kept += 1n;
    var text = kept.toString().padStart(places + 1, '0');
    if (places) text = (text.slice(0, -places) + '.' + text.slice(-places)).replace(/0+$/, '').replace(/\.$/, '');
    return (value < 0 ? '-' : '') + text;
  }

  function inUnit(si, spelling) {
    var unit = Swardbook.quantity.unit(spelling);
    return tidy((si - unit.offset) / unit.factor);
  }

  function unitAfter(number, spelling) {
    if (number === '1' && Swardbook.own(K.singular, spelling)) return K.singular[spelling];
    return spelling === '1' ? '' : spelling;
  }

  function show(si, spelling, decimals) {
    var number = figures(inUnit(si, spelling), decimals === undefined ? 4 : decimals);
    return (number + ' ' + unitAfter(number, spelling)).trim();
  }

  function exact(si, spelling) {
    var number = String(inUnit(si, spelling));
    return (number + ' ' + unitAfter(number, spelling)).trim();
  }

  function pretty(text) { return text.replace(/([a-z])2\b/g, '$1²').replace(/([a-z])3\b/g, '$1³'); }

  function dimension(spelling) { return Swardbook.quantity.unit(spelling).dimension; }

  /* The value typed [SI] and whether it is of a product that is weighed. `chosen`: the unit of a bare number. */
  function read(input, text, chosen) {
    var Q = Swardbook.quantity;
    var ways = [{ unit: input.unit, weighed: false }];
    if (input.weighed) ways.push({ unit: input.weighed, weighed: true });
    if (input.weighed && dimension(chosen) === dimension(input.weighed)) ways.reverse();
    var first = null;
    for (var i = 0; i < ways.length; i += 1) {
      var way = ways[i];
      var start = dimension(chosen) === dimension(way.unit) ? chosen : way.unit;
      try {
        return { si: input.many ? Q.readList(text, start) : readOne(text, start), weighed: way.weighed };
      } catch (problem) {
        Swardbook.sentenceOf(problem);
        first = first || problem;
        if (problem.code !== 'wrong-dimension') break;
      }
    }
    throw first;
  }

  function readOne(text, start) {
    try {
      return Swardbook.quantity.read(text, start);
    } catch (problem) {
      if (problem.code !== 'wrong-dimension' || !/difference$|^K$/.test(start)) throw problem;
      return Swardbook.quantity.read(text + ' difference', start);
    }
  }

  function slack(limit) { return K.slack * Math.abs(limit); }

  function said(name, input, limit, given, shown) {
    return Swardbook.filled(K.sentences[name], { question: input.question, limit: show(limit, shown), given: show(given, shown) });
  }

  function impossible(input, value, shown) {
    var each = Array.isArray(value) ? value : [value];
    for (var i = 0; i < each.length; i += 1) {
      var si = each[i];
      if (input.above !== undefined && si <= input.above) return said('above', input, input.above, si, shown);
      if (input.at_least !== undefined && si < input.at_least - slack(input.at_least)) return said('at-least', input, input.at_least, si, shown);
      if (input.at_most !== undefined && si > input.at_most + slack(input.at_most)) return said('at-most', input, input.at_most, si, shown);
      if (input.whole && Math.abs(si - Math.round(si)) > K.slack) return said('whole', input, 0, si, shown);
    }
    return null;
  }

  function unusual(input, value, shown) {
    var each = Array.isArray(value) ? value : [value], low = input.usual_low, high = input.usual_high;
    var least = Math.min.apply(null, each), most = Math.max.apply(null, each);
    if (low !== undefined && least < low - slack(low)) return said('seldom-under', input, low, least, shown);
    return high !== undefined && most > high + slack(high) ? said('seldom-over', input, high, most, shown) : null;
  }

  /* The results that have an answer, by name. values: of the inputs [SI]; failed(result, problem): told of each that has none. */
  function answers(spec, values, failed) {
    var known = Object.assign({}, values), results = {};
    spec.results.forEach(function (result) {
      try {
        results[result.name] = known[result.name] = Swardbook.formula.answer(result.work, known);
      } catch (problem) {
        if (Swardbook.sentenceOf(problem) && failed) failed(result, problem);
      }
    });
    return results;
  }

  /* The warnings that hold; one that rests on a value that is missing does not. */
  function warned(spec, known) {
    return spec.warnings.filter(function (warning) {
      try {
        return Swardbook.formula.answer(warning.when, known);
      } catch (problem) {
        return !Swardbook.sentenceOf(problem);
      }
    });
  }

  /* spec: one of Swardbook.calculators (a result without `us` has one unit, a warning without `weight` is one of care); typed: {input: {text, unit}}. Gives
     {values, results} in SI, and what to say; unread: what could not be read, told away from its field. */
  function run(spec, typed) {
    var out = { values: {}, results: {}, weighed: false, problems: {}, unread: {}, notes: {}, noAnswer: {}, said: [] };
    spec.inputs.forEach(function (input) { take(input, typed[input.name], out); });
    out.results = answers(spec, out.values, function (result, problem) {
      var why = Swardbook.small(problem.sentence);
      if (problem.code !== 'missing-value') out.noAnswer[result.name] = Swardbook.filled(K.sentences['no-answer'], { label: result.label, why: why });
    });
    out.said = warned(spec, Object.assign({}, out.values, out.results)).map(function (warning) {
      return { say: warning.say, weight: warning.weight || 'care' };
    });
    return out;
  }

  function take(input, typed, out) {
    try {
      var found = read(input, typed.text, typed.unit);
      var shown = found.weighed ? input.weighed : dimension(typed.unit) === dimension(input.unit) ? typed.unit : input.unit;
      var refusal = impossible(input, found.si, shown);
      if (refusal) { out.problems[input.name] = refusal; return; }
      out.values[input.name] = found.si;
      out.weighed = out.weighed || found.weighed;
      var note = unusual(input, found.si, shown);
      if (note) out.notes[input.name] = note;
    } catch (problem) {
      out.problems[input.name] = Swardbook.sentenceOf(problem);
      out.unread[input.name] = Swardbook.filled(K.sentences.unreadable, { label: input.question, why: problem.sentence });
    }
  }

  Swardbook.calculator = { run: run, figures: figures, show: show, exact: exact, pretty: pretty, inUnit: inUnit, tidy: tidy, answers: answers, warned: warned };
})();
