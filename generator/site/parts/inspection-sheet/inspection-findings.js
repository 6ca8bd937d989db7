/* What an inspection found: answers in, and what they stop, soften, leave out and add. An answer is text: a choice's id, or a measure with
   or without its unit. Twin: inspection. */
(function () {
  'use strict';

  function impossible(spec, question, value) {
    function slack(limit) { return spec.slack * Math.abs(limit); }
    if (question.least !== undefined && value < question.least - slack(question.least)) return question.tooLow;
    if (question.most !== undefined && value > question.most + slack(question.most)) return question.tooHigh;
    return null;
  }

  /* {value} or {trouble: sentence}. unit: that of a bare number. */
  function measure(spec, question, text, unit) {
    try {
      var value = Swardbook.quantity.read(text, unit || question.unit), sentence = impossible(spec, question, value);
      return sentence ? { trouble: sentence } : { value: value };
    } catch (problem) {
      return { trouble: Swardbook.sentenceOf(problem) };
    }
  }

  function holds(outcome, chosen, known) {
    if (!outcome.when) return outcome.choice.indexOf(chosen) >= 0;
    try {
      return Boolean(Swardbook.formula.answer(outcome.when, known));
    } catch (problem) {
      return !Swardbook.sentenceOf(problem); /* It asks for a measure that nobody has taken yet. */
    }
  }

  /* Returns stops, added, notes: keys 'question:position'; softened: task to levels and why; leftOut: task to keys; chosen: step to keys;
     measured: question to its measure in SI units; unanswered: ids; troubles: id to sentence; found: every key, in order. unitOf: the unit of a bare number, by question. */
  function findings(spec, answers, unitOf) {
    var known = Object.assign({}, spec.constants), chosen = {}, answered = {};
    var out = { stops: [], softened: {}, leftOut: {}, chosen: {}, measured: {}, added: [], notes: [], unanswered: [], troubles: {}, found: [] };
    spec.questions.forEach(function (question) {
      var text = String(answers[question.id] === undefined ? '' : answers[question.id]);
      if (text.trim()) {
        if (question.choices) {
          if (question.choices.indexOf(text) >= 0) { chosen[question.id] = text; answered[question.id] = true; }
          else out.troubles[question.id] = Swardbook.filled(spec.sentences['no-choice'], { ask: question.ask, text: text });
        } else {
          var read = measure(spec, question, text, unitOf && unitOf(question));
          if (read.trouble) out.troubles[question.id] = read.trouble;
          else { known[question.name] = out.measured[question.id] = read.value; answered[question.id] = true; }
        }
      }
      if (!answered[question.id]) out.unanswered.push(question.id);
    });
    var asked = spec.questions.map(function (question) { return question.id; });
    Object.keys(answers).forEach(function (id) {
      if (asked.indexOf(id) < 0 && String(answers[id]).trim()) out.troubles[id] = Swardbook.filled(spec.sentences['not-asked'], { id: id });
    });
    spec.questions.forEach(function (question) {
      if (!answered[question.id]) return;
      question.outcomes.forEach(function (outcome, position) {
        if (holds(outcome, chosen[question.id], known)) take(out, outcome, question.id + ':' + position);
      });
    });
    Object.keys(out.leftOut).forEach(function (task) { delete out.softened[task]; });
    return out;
  }

  function take(out, outcome, key) {
    out.found.push(key);
    if (outcome.effect === 'stop') out.stops.push(key);
    else if (outcome.effect === 'add') out.added.push(key);
    else if (outcome.effect === 'note') out.notes.push(key);
    else if (outcome.effect === 'leave-out') {
      outcome.tasks.forEach(function (task) { (out.leftOut[task] = out.leftOut[task] || []).push(key); });
    } else if (outcome.effect === 'choose') {
      outcome.steps.forEach(function (step) { (out.chosen[step] = out.chosen[step] || []).push(key); });
    } else {
      outcome.tasks.forEach(function (task) {
        var soft = out.softened[task] = out.softened[task] || { levels: 0, why: [] };
        soft.levels = Math.max(soft.levels, outcome.levels);
        soft.why.push(key);
      });
    }
  }

  Swardbook.inspection = {
    findings: findings,
    /* Of how many things a job waits for; empty for none. */
    stopWords: function (count) { return count ? 'Stop: ' + count + (count === 1 ? ' thing has' : ' things have') + ' to be settled first.' : ''; }
  };
})();
