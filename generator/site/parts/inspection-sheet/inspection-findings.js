/* What an inspection found: answers in, and what they stop, soften, leave out and add. The twin of generator/field/inspection_result.py: a test
   holds the two together. An answer is text: a choice's id, or a measure with or without its unit. */
(function () {
  'use strict';
  window.Swardbook = window.Swardbook || {};
  var SLACK = 1e-9;

  function impossible(question, value) {
    if (question.least !== undefined && value < question.least - SLACK * Math.abs(question.least)) return question.tooLow;
    if (question.most !== undefined && value > question.most + SLACK * Math.abs(question.most)) return question.tooHigh;
    return null;
  }

  /* {value} or {trouble: sentence}. unit: that of a bare number. */
  function measure(question, text, unit) {
    try {
      var value = Swardbook.quantity.read(text, unit || question.unit);
      var sentence = impossible(question, value);
      return sentence ? { trouble: sentence } : { value: value };
    } catch (problem) {
      if (!problem.sentence) throw problem;
      return { trouble: problem.sentence };
    }
  }

  function holds(outcome, chosen, known) {
    if (!outcome.when) return outcome.choice.indexOf(chosen) >= 0;
    try {
      return Boolean(Swardbook.formula.answer(outcome.when, known));
    } catch (problem) {
      if (!problem.code) throw problem;
      return false; /* It asks for a measure that nobody has taken yet. */
    }
  }

  /* Returns stops, added, notes: keys 'question:position'; softened: task to levels and why; leftOut: task to keys; unanswered:
     ids; troubles: id to sentence; found: every key, in order. unitOf: the unit of a bare number, by question. */
  function findings(spec, answers, unitOf) {
    var known = Object.assign({}, spec.constants), chosen = {}, answered = {};
    var out = { stops: [], softened: {}, leftOut: {}, added: [], notes: [], unanswered: [], troubles: {}, found: [] };
    spec.questions.forEach(function (question) {
      var text = String(answers[question.id] === undefined ? '' : answers[question.id]);
      if (text.trim()) {
        if (question.choices) {
          if (question.choices.indexOf(text) >= 0) { chosen[question.id] = text; answered[question.id] = true; }
          else out.troubles[question.id] = question.ask + ": '" + text + "' is not one of its choices.";
        } else {
          var read = measure(question, text, unitOf && unitOf(question));
          if (read.trouble) out.troubles[question.id] = read.trouble;
          else { known[question.name] = read.value; answered[question.id] = true; }
        }
      }
      if (!answered[question.id]) out.unanswered.push(question.id);
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
    } else {
      outcome.tasks.forEach(function (task) {
        var soft = out.softened[task] = out.softened[task] || { levels: 0, why: [] };
        soft.levels = Math.max(soft.levels, outcome.levels);
        soft.why.push(key);
      });
    }
  }

  Swardbook.inspection = { findings: findings };
})();
