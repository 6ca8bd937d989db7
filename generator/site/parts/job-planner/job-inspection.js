/* What the answers of the inspection sheet change in a plan: the rules are the inspection's own (parts/inspection-sheet), what each outcome says and
   adds comes from assets/jobs/inspection.js. Twin: inspection in a plan. */
(function () {
  'use strict';
  /* Answers by question, only text; what was kept may be of another hand. */
  function clean(found) {
    var kept = {};
    Object.keys(found && typeof found === 'object' ? found : {}).forEach(function (id) {
      if (Swardbook.kept.isId(id) && typeof found[id] === 'string' && found[id].trim()) { kept[id] = found[id].trim().slice(0, Swardbook.contract.kept.longest.answer); }
    });
    return kept;
  }

  /* The sheet of the chosen lawn on this device: {answers, lawn, date}; null where nothing is answered. */
  function onDevice() {
    var found = Swardbook.lawns.inspection(), answers = clean(found.answers), head = clean(found.head);
    return Object.keys(answers).length ? { answers: answers, lawn: head.lawn || '', date: head.date || '' } : null;
  }

  function outcome(key) {
    var cut = key.lastIndexOf(':'), question = key.slice(0, cut);
    return Object.assign({ question: question }, Swardbook.jobs.inspection().outcomes[question][+key.slice(cut + 1)]);
  }

  function told(keys) {
    return keys.map(function (key) { var each = outcome(key); return { question: each.question, say: each.say, because: each.because }; });
  }

  function sentences(keys) {
    var says = keys.map(function (key) { return outcome(key).say; });
    return says.filter(function (text, at) { return says.indexOf(text) === at; }).join(' ');
  }

  function each(found, write) {
    var out = {};
    Object.keys(found).forEach(function (task) { out[task] = write(found[task]); });
    return out;
  }

  /* {adjusted, values}: what `jobPlan` is given, and the same plain values as `swardbook plan --inspection --json` gives as "inspection". */
  function read(answers) {
    var found = Swardbook.inspection.findings(Swardbook.inspectionSheet, clean(answers));
    return {
      adjusted: {
        tasksWithout: each(found.leftOut, sentences), softer: each(found.softened, function (soft) { return [soft.levels, sentences(soft.why)]; }),
        added: found.added.map(function (key) { return outcome(key).add; }).filter(Boolean), chosen: Object.keys(found.chosen), measured: found.measured
      },
      values: {
        stops: told(found.stops), softer: each(found.softened, function (soft) { return { levels: soft.levels, why: told(soft.why) }; }),
        left_out: each(found.leftOut, told), chosen: each(found.chosen, told), added: told(found.added), notes: told(found.notes), unanswered: found.unanswered,
        troubles: Object.keys(found.troubles).map(function (id) { return { question: id, sentence: found.troubles[id] }; })
      }
    };
  }

  /* What is told of the steps that this plan does only where needed, each thing once. */
  function toldOf(byStep, plan) {
    var onNeed = plan.kept.filter(function (step) { return step.only_where && byStep[step.id]; }).map(function (step) { return step.id; });
    var all = [].concat.apply([], onNeed.map(function (step) { return byStep[step]; }));
    return all.filter(function (each, at) { return all.findIndex(function (other) { return other.say === each.say && other.because === each.because; }) === at; });
  }

  function item(row, before, say) {
    if (before) { row.appendChild(Swardbook.element('strong', '', before + ' ')); }
    row.appendChild(Swardbook.element('span', '', say.say + ' '));
    row.appendChild(Swardbook.element('span', 'sb-job__because', say.because));
  }

  /* Everything the answers change in this plan, each with its reason, into the list of the page. */
  function show(list, values, plan) {
    var names = Swardbook.jobs.inspection().tasks, rows = [];
    /* What is said of several tasks is said once. */
    function byTask(found, whyOf, words) {
      var first = rows.length;
      Object.keys(found).forEach(function (task) {
        whyOf(found[task]).forEach(function (each) {
          var same = rows.slice(first).filter(function (row) { return row[1].say === each.say && row[1].because === each.because; })[0];
          if (same) { same[2].push(names[task]); } else { rows.push([words, each, [names[task]]]); }
        });
      });
      rows.slice(first).forEach(function (row) { row[0] = row[2].join(', ') + ': ' + row[0]; });
    }
    values.stops.forEach(function (each) { rows.push(['Stop.', each]); });
    byTask(values.softer, function (soft) { return soft.why; }, 'more gently.');
    byTask(values.left_out, function (why) { return why; }, 'left out.');
    toldOf(values.chosen, plan).forEach(function (each) { rows.push(['Needed here.', each]); });
    values.added.forEach(function (each) { rows.push(['Added.', each]); });
    values.notes.forEach(function (each) { rows.push(['', each]); });
    values.troubles.forEach(function (each) { rows.push(['Not read.', { say: each.sentence, because: '' }]); });
    Swardbook.jobSteps.list(list, rows, function (row, each) {
      if (each[0] === 'Stop.') { row.className = 'sb-job__stop'; }
      item(row, each[0], each[1]);
    });
  }

  function sum(values) {
    var asks = Object.keys(Swardbook.jobs.inspection().asks).length, stops = values.stops.length;
    return (stops ? Swardbook.inspection.stopWords(stops) + ' ' : '') + 'Looked at: ' + (asks - values.unanswered.length) + ' of ' + Swardbook.jobWords.count(asks, 'thing') + '.';
  }

  Swardbook.jobInspection = { clean: clean, onDevice: onDevice, read: read, show: show, sum: sum };
})();
