/* Hold or go in the browser: what was answered of a day, and what the rules make of it. Rules, questions, numbers and sentences come from
   assets/holds.js, which the book writes (generator/site/shared/hold_script.py). Twin: hold or go. */
(function () {
  'use strict';
  var own = Swardbook.own;

  /* answers: question to text; units: by question, the unit of a bare number where it is not the question's own; on: the date that is
     asked about, ISO 8601. Gives {known, absent, unlooked, troubles}: SI values and 1 or 0 by the names that rules use; names of what
     there is none of, and of what nobody has looked at; and by question a sentence for what could not be read. A blank is no answer.
     What the grass decides may be added to `known` afterwards. */
  function read(answers, units, on) {
    var day = { known: {}, absent: {}, unlooked: {}, troubles: {} };
    var rules = Swardbook.holdRules;
    Object.keys(answers).forEach(function (id) {
      var text = String(answers[id]).trim();
      if (text === '') { return; }
      try {
        if (!own(rules.questions, id)) { throw refusal('not-asked', id, Object.keys(rules.questions), ', ', id); }
        var question = rules.questions[id];
        readOne(id, question, text, (units || {})[id] || question.unit, day, Swardbook.dates.fromIso(on));
      } catch (problem) {
        day.troubles[id] = Swardbook.sentenceOf(problem);
      }
    });
    rules.pairs.forEach(function (pair) {
      if (day.known[pair[0]] > day.known[pair[1]]) { day.troubles[pair[0]] = rules.sentences['upside-down']; }
    });
    return day;
  }

  function said(name, values) { return Swardbook.filled(Swardbook.holdRules.sentences[name], values); }

  /* word: the text as it is compared with what is known; between: two of these in a list. */
  function refusal(name, word, known, between, text) {
    var near = Swardbook.nearest(word, known);
    return new Swardbook.Problem(name, near === null ? said(name, { text: text, listed: known.join(between) }) : said(name + '-slip', { text: text, near: near }));
  }

  function readOne(id, question, text, unit, day, on) {
    var word = text.toLowerCase(), none = Swardbook.holdRules.none;
    if (question.choices) {
      if (!own(question.choices, word)) { throw refusal('no-choice', word, Object.keys(question.choices), ' or ', text); }
      Object.assign(day.known, question.choices[word]);
      return;
    }
    if (question.none && word === none) { day.absent[id] = true; return; }
    if (question.lately && word === Swardbook.holdRules.unknown) { day.unlooked[id] = true; return; }
    var value, past = question.lately && on !== null ? Swardbook.dates.fromIso(text) : null;
    if (past !== null) {
      if (past > on) { throw new Swardbook.Problem('to-come', said('to-come', { text: text })); }
      day.known[id] = (on - past) * Swardbook.holdRules.daySeconds;
      return;
    }
    try {
      value = Swardbook.quantity.read(text, unit);
    } catch (problem) {
      var why = Swardbook.sentenceOf(problem);
      throw question.none ? new Swardbook.Problem(problem.code, said('or-none', { why: why, none: none, means: question.none })) : problem;
    }
    if (value < question.least) {
      throw new Swardbook.Problem('too-little', said('too-little', { asks: question.asks, least: question.least, text: text }));
    }
    day.known[id] = value;
  }

  /* True, false, or null while a condition hangs on what is not known. Nothing compares with what there is none of. */
  function truth(node, day) {
    if (node.not) {
      var inner = truth(node.not, day);
      return inner === null ? null : !inner;
    }
    if (node.parts) {
      var parts = node.parts.map(function (part) { return truth(part, day); });
      return parts.indexOf(node.any) >= 0 ? node.any : parts.indexOf(null) >= 0 ? null : !node.any;
    }
    if (node.names.some(function (name) { return own(day.absent, name); })) { return false; }
    if (!node.names.every(function (name) { return own(day.known, name); })) { return null; }
    try {
      return Swardbook.formula.answer(node.test, day.known);
    } catch (problem) {
      return Swardbook.sentenceOf(problem) && null;
    }
  }

  function unknown(node, day) {
    if (truth(node, day) !== null) { return []; }
    if (node.not) { return unknown(node.not, day); }
    if (node.parts) {
      return node.parts.reduce(function (names, part) { return names.concat(unknown(part, day)); }, []);
    }
    var missing = node.names.filter(function (name) { return !own(day.known, name); });
    return missing.length ? missing : node.names;
  }

  /* The same day with 'none' for each question that reads so while nobody has answered it. */
  function presuming(day) {
    var absent = Object.assign({}, day.absent), questions = Swardbook.holdRules.questions;
    Object.keys(questions).forEach(function (id) {
      if (questions[id].lately && !own(day.known, id) && !own(day.unlooked, id)) { absent[id] = true; }
    });
    return { known: day.known, absent: absent };
  }

  /* A reason with what was seen and when: 'frost was seen two nights ago'. */
  function reasonOf(rule, day) {
    var rules = Swardbook.holdRules, seen = {};
    Object.keys(rules.questions).forEach(function (id) {
      if (!rules.questions[id].lately) { return; }
      var nights = own(day.known, id) ? Math.floor(day.known[id] / rules.daySeconds + 0.5) : null;
      seen[id] = nights === null ? rules.questions[id].lately : rules.nights.few[nights] || Swardbook.filled(rules.nights.more, { nights: nights });
    });
    return Swardbook.filled(rule.reason, seen);
  }

  function of(task) {
    var holds = Swardbook.holdRules.holds;
    return Object.keys(holds).filter(function (id) { return holds[id].tasks.indexOf(task) >= 0; });
  }

  function names(node) {
    if (node.names) { return node.names; }
    return (node.parts || [node.not]).reduce(function (all, part) { return all.concat(names(part)); }, []);
  }

  function questionsOf(named) {
    var by = Swardbook.holdRules.answeredBy;
    return Object.keys(Swardbook.holdRules.questions).filter(function (question) {
      return named.some(function (name) { return by[name] === question; });
    });
  }

  /* Every question that these holds may ask, in the order of the questions. */
  function asks(ids) {
    return questionsOf(ids.reduce(function (all, id) {
      return Swardbook.holdRules.holds[id].rules.reduce(function (named, rule) { return named.concat(names(rule.when)); }, all);
    }, []));
  }

  /* When to ask again: the longest wait of what holds the work; '' where nothing does. */
  function again(reasons) {
    var waits = reasons.filter(gravest).map(function (each) { return Swardbook.holdRules.again.indexOf(each.rule.again); });
    return waits.length ? Swardbook.holdRules.again[Math.max.apply(null, waits)] : '';
  }

  /* ids: of holds; day: from read. Gives {answer, again, reasons, notKnown, quiet, presumed}: go, care, hold or ask; when to ask again; {hold, rule, said} for each
     that holds, those that hold the work first; {question, could, holds} for what is still to be asked; ids that neither hold nor ask;
     questions that nobody answered and that were read as 'none', where another answer could have been graver. */
  function answer(ids, day) {
    var reasons = [], undecided = [], quiet = [], asSaid = presuming(day), presumed = [];
    ids.forEach(function (id) {
      var before = reasons.length + undecided.length;
      Swardbook.holdRules.holds[id].rules.forEach(function (rule) {
        var found = truth(rule.when, asSaid);
        presumed = presumed.concat(unknown(rule.when, day).filter(function (name) { return own(asSaid.absent, name) && !own(day.absent, name); }));
        if (found) { reasons.push({ hold: id, rule: rule, said: reasonOf(rule, day) }); }
        if (found === null) { undecided.push({ hold: id, rule: rule, questions: questionsOf(unknown(rule.when, asSaid)) }); }
      });
      if (reasons.length + undecided.length === before) { quiet.push(id); }
    });
    reasons = reasons.filter(gravest).concat(reasons.filter(function (each) { return !gravest(each); }));
    var found = reasons.length ? reasons[0].rule.answer : 'go';
    var graver = undecided.some(function (each) { return gravest(each) || found === 'go'; });
    return {
      answer: found !== 'hold' && graver ? 'ask' : found, again: again(reasons), reasons: reasons, notKnown: notKnown(undecided), quiet: quiet, presumed: questionsOf(presumed)
    };
  }

  function gravest(each) { return each.rule.answer === 'hold'; }

  function notKnown(undecided) {
    return Object.keys(Swardbook.holdRules.questions).map(function (question) {
      var asking = undecided.filter(function (each) { return each.questions.indexOf(question) >= 0; });
      var holds = asking.map(function (each) { return each.hold; });
      return {
        question: question, could: asking.some(gravest) ? 'hold' : 'care',
        holds: holds.filter(function (id, position) { return holds.indexOf(id) === position; })
      };
    }).filter(function (each) { return each.holds.length; });
  }

  Swardbook.holds = { read: read, of: of, asks: asks, answer: answer };
})();
