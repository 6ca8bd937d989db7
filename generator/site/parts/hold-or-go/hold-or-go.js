/* Hold or go: the answer of a day first, then what is asked, then every reason with what would change it and where it comes from.

   A page that mounts it loads assets/holds.js and assets/hold-or-go.js (generator/site/shared/hold_view.py: hold_scripts), and then says
     var box = Swardbook.holdOrGo.mount(element, {task: 'feed', date: '2026-11-28', known: {depth_due: '12 mm'}, open: false, onAnswer: act});
   element   any element; what stands in it goes. Nothing that is put there bears a data attribute; ids begin with sb-hold-.
   task      id of a task. Without a hold of it, mount returns null and hides the element.
   date      the day that is asked about, ISO 8601; today without it. What is said of a date is kept on this device once, for every
             task and step of that date; a label's limits are the task's own.
   known     what the page knows already, by question (generator/field/forecast.py), and so is not asked: depth_due, days_since_cut_down,
             cool_season, surface_running, or any other. Text as typed ('12 mm', 'none', 'wet'), a number in the question's own
             metric unit, or true and false. Blank, null and undefined are not known.
   from      who says what is known; 'the job' without it.
   open      false: what is asked stays folded. Without it, it is unfolded until there is an answer.
   onAnswer  called now and with every change: {answer: 'go' | 'care' | 'hold' | 'ask', words: 'Go with care', names: of the holds that
             say so, open: names of the questions that could still change it}.
   box       {update({date, known}), answer(), remove()}. */
(function () {
  'use strict';
  var TYPING_MS = 400;
  var mounted = 0, own = Swardbook.own, add = Swardbook.add;

  function rules() { return Swardbook.holdRules; }

  /* Known values as a reader would type them. */
  function typed(known) {
    var texts = {};
    Object.keys(known || {}).forEach(function (id) {
      var value = known[id];
      if (value === null || value === undefined || value === '' || !own(rules().questions, id)) { return; }
      var unit = rules().questions[id].unit;
      texts[id] = value === true ? 'yes' : value === false ? 'no' : typeof value === 'number' && unit ? value + ' ' + unit : String(value);
    });
    return texts;
  }

  /* What a grass answers by itself is asked as the grass. */
  function grassAnswers(id) {
    return Object.keys(rules().grasses).some(function (grass) { return own(rules().grasses[grass].known, id); });
  }

  function fieldOf(id) { return grassAnswers(id) ? Swardbook.holdsKept.grass : id; }

  /* Questions to ask, each once, as what a field needs; without those whose answers are known, and for several tasks without what only the
     label of one says. */
  function specs(ids, known, several) {
    var wanted = {};
    Swardbook.holds.asks(ids).forEach(function (id) {
      if (own(known, id) || several && rules().questions[id].label) { return; }
      var field = fieldOf(id);
      if (field === id) { wanted[id] = rules().questions[id]; return; }
      var list = { '': 'Not known' };
      Object.keys(rules().grasses).forEach(function (grass) { list[grass] = rules().grasses[grass].name; });
      wanted[field] = { name: 'Grass', asks: 'The grass that the work is done on', list: list };
    });
    return wanted;
  }

  /* A day that can be answered: what could not be read is not known. */
  function dayOf(answers, known, on) {
    var given = Object.assign({}, answers, known), grass = answers[Swardbook.holdsKept.grass];
    delete given[Swardbook.holdsKept.grass];
    var day = Swardbook.holds.read(given, {}, on);
    Object.keys(day.troubles).forEach(function (id) {
      delete day.known[id];
      rules().pairs.forEach(function (pair) { if (pair[0] === id) { delete day.known[pair[1]]; } });
    });
    if (own(rules().grasses, grass)) { day.known = Object.assign({}, rules().grasses[grass].known, day.known); }
    return day;
  }

  /* The elements of one mount, by name. */
  function frame(element) {
    var made = {}, box = add(element, 'div', 'sb-hold__live');
    made.answer = add(box, 'div', 'sb-hold__answer');
    made.sign = add(made.answer, 'span', 'sb-hold__sign');
    made.said = add(made.answer, 'p', 'sb-hold__said');
    made.day = add(box, 'details', 'sb-hold__day');
    made.title = add(made.day, 'summary');
    var inside = add(made.day, 'div', 'sb-hold__asked');
    made.fields = add(inside, 'div', 'sb-hold__fields');
    made.told = add(inside, 'p', 'sb-hold__told');
    var end = add(inside, 'p', 'sb-hold__end');
    made.kept = add(end, 'span', 'sb-note');
    made.forget = end.appendChild(Swardbook.button('Clear what was said about this day'));
    made.why = add(box, 'div', 'sb-hold__why');
    return made;
  }

  /* The gravest that hangs on each field that is still to be filled in. */
  function openFields(found) {
    var could = {};
    found.notKnown.forEach(function (each) {
      var id = fieldOf(each.question);
      could[id] = could[id] === 'hold' ? 'hold' : each.could;
    });
    return could;
  }

  function once(all) { return Swardbook.holdShow.once(all); }

  function namesOf(found) {
    return Swardbook.holdShow.once(found.reasons.filter(function (each) { return each.rule.answer === found.answer; }).map(function (each) {
      return rules().holds[each.hold].name;
    }));
  }

  function toldWords(id, text, read) {
    var question = rules().questions[id], measured = question.unit && own(read.known, id);
    return Swardbook.small(question.name) + ' ' +
      (measured ? Swardbook.holdField.shown(question, read.known[id]) : text === rules().none ? question.none : text);
  }

  function mount(element, options) {
    var ids = options.tasks ? once([].concat.apply([], options.tasks.map(Swardbook.holds.of))) : Swardbook.holds.of(options.task);
    element.textContent = '';
    element.hidden = !ids.length;
    if (!ids.length) { return null; }
    var K = Swardbook.holdsKept, W = Swardbook.holdShow, parts = frame(element), fields = {}, asked = '', timer = null, waiting = null, last = null;
    var prefix = 'sb-hold-' + (mounted += 1);

    function date() { return options.date || Swardbook.dates.iso(Swardbook.dates.today()); }

    function say(id, text, settled) {
      var day = date();
      clearTimeout(timer);
      waiting = function () { K.say(day, options.task, id, text); };
      if (settled) { settle(); } else { timer = setTimeout(settle, TYPING_MS); }
    }

    /* What was typed last is kept now, for whoever closes the page in the middle of it. */
    function settle() {
      var act = waiting;
      clearTimeout(timer);
      waiting = null;
      if (act) { act(); }
    }

    function build(known) {
      var wanted = specs(ids, known, options.tasks);
      if (asked === Object.keys(wanted).join()) { return; }
      asked = Object.keys(wanted).join();
      parts.fields.textContent = '';
      fields = {};
      Object.keys(wanted).forEach(function (id) {
        fields[id] = Swardbook.holdField.field(prefix + '-' + id, wanted[id], function (text, settled) { say(id, text, settled); });
        parts.fields.appendChild(fields[id].root);
      });
    }

    function goTo(id) {
      parts.day.open = true;
      if (fields[id]) { fields[id].focus(); }
    }

    function show(found) {
      var could = openFields(found), names = {};
      Object.keys(could).forEach(function (id) { names[id] = (fields[id] || rules().questions[id]).name; });
      last = Object.assign(answered(found), { open: Object.keys(could).map(function (id) { return names[id]; }) });
      /* Read out only where the reader is: the same day is asked at every step of a job. */
      parts.said.setAttribute('aria-live', element.contains(document.activeElement) ? 'polite' : 'off');
      W.headline(parts, last);
      Object.keys(fields).forEach(function (id) { fields[id].open(W.could[could[id]] || ''); });
      W.why(parts.why, found, could, names, goTo);
    }

    function notes(known, read, at) {
      var told = Object.keys(known).filter(function (id) { return Swardbook.holds.asks(ids).indexOf(id) >= 0; });
      parts.title.textContent = 'What the day is like: ' + Swardbook.dates.words(Swardbook.dates.fromIso(date())) + (at ? ', told at ' + at : '');
      parts.told.textContent = told.length ? 'From ' + (options.from || 'the job') + ': ' + told.map(function (id) {
        return toldWords(id, known[id], read);
      }).join('; ') + '.' : '';
      parts.kept.textContent = !at ? 'What you say is kept on this device only, for this date.'
        : K.lasts() ? 'Kept on this device only.' : 'This browser keeps nothing for this page, so it lasts only until you close the page.';
      parts.forget.hidden = !at;
    }

    function refresh() {
      var known = typed(options.known), kept = K.of(date(), options.task), answers = {};
      build(known);
      Object.keys(fields).forEach(function (id) {
        answers[id] = kept.answers[id] || '';
        if (!fields[id].root.contains(document.activeElement)) { fields[id].show(answers[id]); }
      });
      var read = dayOf(answers, known, date());
      Object.keys(fields).forEach(function (id) { fields[id].trouble(read.troubles[id]); });
      notes(known, read, kept.at);
      show(Swardbook.holds.answer(ids, read));
      if (options.onAnswer) { options.onAnswer(last); }
    }

    function woken() { if (document.hidden) { settle(); } else { refresh(); } }
    function inFile() {
      var kept = K.of(date(), options.task).answers;
      var lines = Object.keys(kept).map(function (id) { return (own(fields, id) ? fields[id].name : rules().questions[id] ? rules().questions[id].name : id) + ': ' + kept[id]; });
      return { name: 'day-' + date() + '.txt', kind: 'text/plain', text: [parts.title.textContent, parts.said.textContent].concat(lines).join('\n') + '\n' };
    }

    var leave = K.follow(refresh), notice = Swardbook.keptNotice(element, 'holds', inFile);
    document.addEventListener('swardbook:units', refresh);
    window.addEventListener('pagehide', settle);
    document.addEventListener('visibilitychange', woken); /* A phone that slept through midnight. */
    parts.forget.addEventListener('click', function () {
      K.forget(date());
      parts.title.focus(); /* The button is gone with what it forgot. */
    });
    parts.answer.hidden = parts.why.hidden = parts.told.hidden = Boolean(options.tasks);
    refresh();
    parts.day.open = options.open !== false && last.answer === 'ask';
    return {
      update: function (changed) { Object.assign(options, changed); refresh(); },
      answer: function () { return last; },
      remove: function () {
        settle();
        leave();
        window.removeEventListener('pagehide', settle);
        notice.end();
        document.removeEventListener('swardbook:units', refresh);
        document.removeEventListener('visibilitychange', woken);
        element.textContent = '';
      }
    };
  }

  /* What the grass of the chosen lawn answers by itself: yes or no. */
  function ofLawn() {
    var lawn = Swardbook.lawns.chosen(), known = {};
    if (!lawn || !own(rules().grasses, lawn.grass)) { return { known: known, from: undefined }; }
    Object.keys(rules().grasses[lawn.grass].known).forEach(function (id) { known[id] = Boolean(rules().grasses[lawn.grass].known[id]); });
    return { known: known, from: 'lawn ' + lawn.code };
  }

  function start(part) {
    if (!rules()) { return; } /* Its rules are not on this page: they stay as printed. */
    var live = part.querySelector('[data-hold=live]'), box = mount(live, Object.assign({ task: part.getAttribute('data-task') }, ofLawn()));
    if (!box) { return; }
    document.addEventListener('swardbook:lawn-chosen', function () { box.update(ofLawn()); });
    part.querySelector('[data-hold=rules]').open = false;
  }

  function answered(found) {
    return {
      answer: found.answer, words: Swardbook.capital(rules().answers[found.answer]), again: found.answer === 'hold' ? found.again : '', names: namesOf(found),
      open: Object.keys(openFields(found))
    };
  }

  Swardbook.holdOrGo = {
    mount: mount,
    answer: function (task, date, known) {
      var ids = Swardbook.holds.of(task);
      return ids.length ? answered(Swardbook.holds.answer(ids, dayOf(Swardbook.holdsKept.of(date, task).answers, typed(known), date))) : null;
    }
  };
  Swardbook.component('hold-or-go', start);
})();
