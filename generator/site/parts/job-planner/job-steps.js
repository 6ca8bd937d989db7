/* The steps on the page: a list item each, kept while the job changes, so that nobody loses the field they are in. Twin: job on its page. */
(function () {
  'use strict';

  var MOST_NAMED = 3;

  /* Looked for once: the page is long, and every tap asks for many. */
  function part(root, name) {
    var of = root.sbParts || (root.sbParts = {});
    return of[name] || (of[name] = root.querySelector('[data-part="' + name + '"]'));
  }

  function clear(element) { while (element.firstChild) { element.removeChild(element.firstChild); } return element; }

  function list(element, items, write) {
    Swardbook.filledBy(element, function (made) { items.forEach(function (item) { write(Swardbook.add(made, 'li'), item); }); });
    Swardbook.hide(element, !items.length);
  }

  function words(element, text) {
    Swardbook.filledBy(element, function (made) { Swardbook.words(made, text); });
    Swardbook.hide(element, !text.length);
  }

  function say(root, name, text) {
    var element = part(root, name);
    Swardbook.say(element, text || '');
    Swardbook.hide(element, !text);
  }

  function link(address, text) {
    var made = Swardbook.element('a', '', text);
    made.href = address;
    return made;
  }

  function quantity(pair) { return Swardbook.words(Swardbook.element('span'), [pair]); }

  /* What a calculator answers at a step: [{label, pair}]. planned: the quantity in the plan's data. */
  function answers(given, planned) {
    var main = planned.buy ? [planned.buy.result] : planned.answers.length ? planned.answers : Swardbook.jobs.book().calculators[given.calculator].main;
    return Swardbook.calculators[given.calculator].results.filter(function (result) {
      return main.indexOf(result.name) >= 0 && given.results[result.name];
    }).map(function (result) {
      return { label: result.label, pair: Swardbook.jobWords.amount(given.results[result.name], result) };
    });
  }

  function quantities(element, step, planned, pages) {
    var book = Swardbook.jobs.book();
    list(element, step.quantities, function (row, given) {
      row.appendChild(link(pages + given.calculator + '.html', book.calculators[given.calculator].name));
      var ask = Swardbook.jobWords.ask(given);
      row.appendChild(document.createTextNode(': ' + ask));
      if (ask) { return; }
      answers(given, planned.quantities[step.quantities.indexOf(given)]).forEach(function (answer, number) {
        row.appendChild(document.createTextNode((number ? '; ' : '') + answer.label + ' '));
        row.appendChild(Swardbook.element('strong')).appendChild(quantity(answer.pair));
      });
    });
  }

  function fill(item, step, planned, titles, job, root) {
    var W = Swardbook.jobWords, book = Swardbook.jobs.book();
    function of(name) { return part(item, name); }
    var byHand = Boolean(job.done[step.id] || job.put[step.id]);
    Swardbook.say(of('date'), W.dates(step));
    Swardbook.say(of('title'), step.title);
    Swardbook.each(item, '[data-part=about]', function (each) { Swardbook.say(each, ': ' + step.title); });
    say(item, 'moved', W.moved(step, titles, byHand));
    say(item, 'only-where', step.only_where);
    say(item, 'open', step.counted ? '' : W.said('open'));
    say(item, 'if-needed', step.counted ? '' : W.said('if_needed'));
    say(item, 'say', step.say);
    of('level').className = 'sb-level sb-level--' + (step.level || 'none');
    Swardbook.say(of('level'), step.level || '');
    Swardbook.say(of('how'), step.how || '');
    Swardbook.hide(of('how-line'), !step.how);
    say(item, 'wait', step.wait_for);
    quantities(of('quantities'), step, planned, root.dataset.calculatorPages);
    words(of('settings'), W.settings(step));
    list(of('warnings'), [].concat.apply([], step.quantities.map(function (each) { return each.warnings; })), plain);
    list(of('cautions'), step.cautions, function (row, id) { row.appendChild(link(root.dataset.cautions + id + '.html', book.cautions[id])); });
    Swardbook.say(of('who'), W.who[step.who]);
    Swardbook.say(of('minutes'), W.spent(step.minutes));
    say(item, 'why', step.why);
    words(of('usual'), W.usual(step));
    say(item, 'step-gear', step.gear.join(', '));
    Swardbook.say(of('day-label'), job.done[step.id] ? 'Done on' : 'Put off to');
    Swardbook.hide(item.querySelector('[data-act=back]'), !byHand || job.done[step.id]);
    Swardbook.hide(of('not-here'), !step.only_where);
    Swardbook.hide(of('needed'), !step.only_where);
    var entry = Swardbook.jobTick.entry(step, planned, job);
    Swardbook.hide(of('write-down'), !entry);
    of('write-down').href = root.dataset.record + '#' + entry;
    item.classList.toggle('sb-job-step--done', Boolean(job.done[step.id]));
  }

  /* What a reader may have set, as the job has it. */
  function settle(item, step, job) {
    var fields = item.sbFields;
    if (fields.day !== document.activeElement) { fields.day.value = step.date; }
    fields.done.checked = Boolean(job.done[step.id]);
    fields.without.checked = false;
    fields.needed.checked = step.counted;
    Swardbook.hide(fields.ask, true); /* What was asked is of the job as it was. */
  }

  /* What is looked for at every tap, found once. */
  function fieldsOf(item) {
    function act(name) { return item.querySelector('[data-act=' + name + ']'); }
    return {
      day: act('day'), done: act('done'), without: act('without'), needed: act('needed'), ask: item.querySelector('[data-part=tick-ask]'),
      card: item.querySelector('[data-part=card]'), date: item.querySelector('[data-part=date]')
    };
  }

  /* Written only where what it says has changed: a tap is answered at once on a slow telephone, and most of a job stays as it was. */
  function anew(element, of, write) {
    var now = JSON.stringify(of);
    if (element.sbOf === now) { return; }
    write();
    element.sbOf = now;
  }

  /* Folded or open by what the job has come to; what the reader folds or opens meanwhile stays so until that changes. */
  function fold(details, open) {
    if (details.sbOpen !== open) { details.open = open; }
    details.sbOpen = open;
  }

  /* Open is the step that comes next, in its stage of the plan; with all parts on the page, everything that is not done. */
  function unfold(root, out, job) {
    var first = out.steps.filter(function (step) { return !job.done[step.id]; })[0], all = root.classList.contains('sb-job--all'), items = {};
    Swardbook.each(root, '[data-step]', function (item) { items[item.dataset.step] = item; });
    out.steps.forEach(function (step) {
      fold(items[step.id].sbFields.card, !job.done[step.id] && (step === first || all));
    });
    ['before', 'day', 'after'].forEach(function (stage) {
      var steps = out.steps.filter(function (step) { return step.stage === stage; }), done = steps.filter(function (step) { return job.done[step.id]; }).length;
      fold(root.querySelector('[data-stage=' + stage + ']'), all || !first || first.stage === stage);
      Swardbook.say(part(root, 'stage-' + stage), Swardbook.jobWords.said('stage_sum', { count: Swardbook.jobWords.count(steps.length, 'step'), done: done }));
    });
  }

  /* What is past its day and not done: nothing moves until the reader says so. */
  function late(box, out, job) {
    var today = Swardbook.dates.iso(Swardbook.dates.today()), W = Swardbook.jobWords;
    var found = out.steps.filter(function (step) { return step.counted && !job.done[step.id] && (step.until || step.date) < today; });
    Swardbook.hide(box, !found.length);
    box.querySelector('[data-part=late-said]').textContent = found.length ? W.said(found.length > MOST_NAMED ? 'late_many' : 'late_steps', {
      count: W.count(found.length, 'step'), list: found.slice(0, MOST_NAMED).map(function (step) { return step.title; }).join('; '), more: found.length - MOST_NAMED
    }) : '';
  }

  /* out: the job as jobWork gives it; plan: its steps as jobPlan gives them. */
  function show(root, out, plan, job) {
    var blank = part(root, 'blank-step'), titles = {}, planned = {}, there = {}, focus = document.activeElement;
    plan.kept.forEach(function (step) { titles[step.id] = step.title; planned[step.id] = step; });
    /* The steps that were printed have nothing to fill in. */
    Swardbook.each(root, '[data-step]', function (item) { if (item.sbOf) { there[item.dataset.step] = item; } else { item.remove(); } });
    ['before', 'day', 'after'].forEach(function (stage) {
      var place = part(root, 'steps-' + stage);
      var items = out.steps.filter(function (step) { return step.stage === stage; }).map(function (step) {
        var item = there[step.id];
        if (!item) {
          item = document.importNode(blank.content, true).querySelector('li');
          item.dataset.step = step.id;
          item.id = 'job-step-' + step.id;
          item.sbFields = fieldsOf(item);
        }
        delete there[step.id];
        anew(item, [step, job.done[step.id], job.put[step.id], job.plan, job.grass, job.name, job.typed], function () { fill(item, step, planned[step.id], titles, job, root); });
        settle(item, step, job);
        Swardbook.jobHold.show(item, step, out, job, root);
        return item;
      });
      items.forEach(function (item, number) { if (place.children[number] !== item) { place.insertBefore(item, place.children[number] || null); } });
      /* A day that several steps have is said once to the eye. */
      items.forEach(function (item, number) {
        item.classList.toggle('sb-job-step--same-day', number > 0 && item.sbFields.date.textContent === items[number - 1].sbFields.date.textContent);
      });
      Swardbook.hide(place.closest('[data-stage]'), !items.length);
    });
    Object.keys(there).forEach(function (id) {
      Swardbook.jobHold.gone(there[id]);
      there[id].remove();
    });
    unfold(root, out, job);
    if (focus && focus !== document.activeElement && document.contains(focus)) { focus.focus(); }
  }

  /* The first step that is not ticked, to go to at once: on a telephone the list is long. */
  function next(place, out, job) {
    var first = out.steps.filter(function (step) { return !job.done[step.id]; })[0];
    Swardbook.hide(place, !first);
    Swardbook.filledBy(place, function (made) {
      if (!first) { return; }
      made.appendChild(document.createTextNode('Next, ' + Swardbook.jobWords.dates(first) + ': '));
      made.appendChild(link('#job-step-' + first.id, first.title));
    });
  }

  /* What was put off, and how many steps move with it. */
  function moves(out, plan, job) {
    var titles = {};
    plan.kept.forEach(function (step) { titles[step.id] = step.title; });
    var late = out.steps.filter(function (step) { return (job.put[step.id] || job.done[step.id]) && step.moved_days; });
    if (!late.length) { return ''; }
    var with_ = out.steps.filter(function (step) { return step.moved_by; }).map(function (step) { return step.title; });
    return late.map(function (step) { return step.title + ': ' + Swardbook.jobWords.moved(step, titles, true); }).join(' ') +
      (with_.length ? ' What waits for it moves with it: ' + with_.join('; ') + '. ' : ' Nothing has to move with it. ') + 'Everything else stays.';
  }

  function plain(row, text) { row.textContent = text; }

  Swardbook.jobSteps = { show: show, part: part, anew: anew, plain: plain, words: words, next: next, late: late, unfold: unfold, moves: moves, list: list, say: say, clear: clear, link: link, quantity: quantity, answers: answers };
})();
