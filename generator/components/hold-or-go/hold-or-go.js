/* Hold or go: the answer of a day first, then what is asked, then every reason with what would change it and where it comes from.

   A page that mounts it loads assets/holds.js and assets/hold-or-go.js (generator/pages/hold.py: hold_scripts), and then says
     var box = Swardbook.holdOrGo.mount(element, {task: 'feed', date: '2026-11-28', known: {depth_due: '12 mm'}, open: false, onAnswer: act});
   element   any element; what stands in it goes. Nothing that is put there bears a data attribute; ids begin with sb-hold-.
   task      id of a task. Without a hold of it, mount returns null and hides the element.
   date      the day that is asked about, ISO 8601; today without it. What is said of a date is kept on this device once, for every
             task and step of that date; a label's limits are the task's own.
   known     what the page knows already, by question (generator/turf/forecast.py), and so is not asked: depth_due, days_since_cut_down,
             cool_season, surface_running, or any other. Text as typed ('12 mm', 'none', 'wet'), a number in the question's own
             metric unit, or true and false. Blank, null and undefined are not known.
   from      who says what is known; 'the job' without it.
   open      false: what is asked stays folded. Without it, it is unfolded until there is an answer.
   onAnswer  called now and with every change: {answer: 'go' | 'care' | 'hold' | 'ask', words: 'Go with care', names: of the holds that
             say so, open: names of the questions that could still change it}.
   box       {update({date, known}), answer(), remove()}. */
(function () {
  'use strict';
  var SHAPES = {
    go: ['M12 2.2a9.8 9.8 0 1 1 0 19.6 9.8 9.8 0 0 1 0-19.6z', 'M7.2 12.4l3.4 3.4 6.4-7.2'],
    care: ['M12 2.5 22.5 21.5H1.5z', 'M12 9v6M12 18v.6'],
    hold: ['M8 2h8l6 6v8l-6 6H8l-6-6V8z', 'M7 12h10'],
    ask: ['M12 2.2a9.8 9.8 0 1 1 0 19.6 9.8 9.8 0 0 1 0-19.6z', 'M9.2 9.4a2.9 2.9 0 1 1 4.2 2.7c-.9.5-1.4 1-1.4 2M12 17v.6']
  };
  var BOUND = { low: 'high', label_low: 'label_high' };
  var TYPING_MS = 400;
  var FEW = 3;
  var COULD = { hold: 'Not known yet: could hold the work', care: 'Not known yet: could ask for care' };
  var here = document.currentScript && document.currentScript.src;
  /* The address of the site, so that links lead from any page; none where the script is not a file of its own. */
  var root = here && /assets\/[^\/]*$/.test(here) ? here.replace(/assets\/[^\/]*$/, '') : '';
  var mounted = 0;

  function own(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }
  function add(parent, tag, className, text) { return parent.appendChild(Swardbook.element(tag, className, text)); }
  function capital(text) { return Swardbook.holdField.capital(text); }
  function small(text) { return text.charAt(0).toLowerCase() + text.slice(1); }
  function rules() { return Swardbook.holdRules; }

  function link(parent, path, text, className) {
    if (!root) { return add(parent, 'span', className, text); }
    var made = add(parent, 'a', className, text);
    made.href = root + path;
    return made;
  }

  function shape(answer) {
    var space = 'http://www.w3.org/2000/svg', svg = document.createElementNS(space, 'svg');
    svg.setAttribute('class', 'sb-hold__shape');
    svg.setAttribute('viewBox', '0 0 24 24');
    svg.setAttribute('aria-hidden', 'true');
    SHAPES[answer].forEach(function (drawn, number) {
      var path = svg.appendChild(document.createElementNS(space, 'path'));
      path.setAttribute('class', number ? 'sb-hold__stroke' : 'sb-hold__plate');
      path.setAttribute('d', drawn);
    });
    return svg;
  }

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

  /* Questions to ask, each once, as what a field needs; without those whose answers are known. */
  function specs(ids, known) {
    var wanted = {};
    Swardbook.holds.asks(ids).forEach(function (id) {
      if (own(known, id)) { return; }
      var field = fieldOf(id);
      if (field === id) { wanted[id] = rules().questions[id]; return; }
      var list = { '': 'Not known' };
      Object.keys(rules().grasses).forEach(function (grass) { list[grass] = rules().grasses[grass].name; });
      wanted[field] = { name: 'Grass', asks: 'The grass that the work is done on', list: list };
    });
    return wanted;
  }

  /* A day that can be answered: what could not be read is not known. */
  function dayOf(answers, known) {
    var day = Swardbook.holds.read(Object.assign({}, answers, known)), grass = answers[Swardbook.holdsKept.grass];
    Object.keys(day.troubles).forEach(function (id) {
      delete day.known[id];
      delete day.known[BOUND[id]];
    });
    if (own(rules().grasses, grass)) { day.known = Object.assign({}, rules().grasses[grass].known, day.known); }
    return day;
  }

  function once(all) { return all.filter(function (each, position) { return all.indexOf(each) === position; }); }

  function sources(parent, rule) {
    var marks = add(parent, 'span', 'sb-source-marks');
    add(marks, 'span', 'sb-hidden', 'Source: ');
    rule.from.forEach(function (source, number) {
      if (number) { add(marks, 'span', 'sb-source-marks__comma', ', '); }
      var kind = 'sb-source-marks__mark sb-source-marks__mark--';
      if (source.id) { link(marks, 'sources.html#' + source.id, source.label, kind + 'published'); }
      else { add(marks, 'span', kind + (source.label === 'assumption' ? 'assumption' : 'practice'), source.label); }
    });
    if (rule.fromMemory) { add(marks, 'span', 'sb-source-marks__mark sb-source-marks__mark--memory', ' from memory, not yet checked'); }
  }

  function reason(list, each) {
    var item = add(list, 'li', 'sb-hold__rule sb-hold__rule--' + each.rule.answer);
    var head = add(item, 'p', 'sb-hold__because');
    add(head, 'strong', '', capital(rules().answers[each.rule.answer]) + ': ' + rules().holds[each.hold].name + '.');
    head.appendChild(document.createTextNode(' ' + each.rule.reason));
    var change = add(item, 'p', 'sb-hold__change');
    add(change, 'strong', '', 'What would change it: ');
    change.appendChild(document.createTextNode(each.rule.change));
    var from = add(item, 'p', 'sb-hold__from');
    Swardbook.words(add(from, 'span', 'sb-hold__if'), each.rule['if']);
    from.appendChild(document.createTextNode('. '));
    sources(from, each.rule);
    if (each.rule.note) { add(from, 'span', 'sb-note', ' ' + each.rule.note); }
  }

  function mount(element, options) {
    var ids = Swardbook.holds.of(options.task), K = Swardbook.holdsKept;
    element.textContent = '';
    element.hidden = !ids.length;
    if (!ids.length) { return null; }
    var prefix = 'sb-hold-' + (mounted += 1), fields = {}, asked = '', timer = null, last = null;
    var box = add(element, 'div', 'sb-hold__live');
    var answer = add(box, 'div', 'sb-hold__answer'), sign = add(answer, 'span', 'sb-hold__sign');
    var said = add(answer, 'p', 'sb-hold__said');
    said.setAttribute('role', 'status');
    var day = add(box, 'details', 'sb-hold__day'), title = add(day, 'summary'), inside = add(day, 'div', 'sb-hold__asked');
    var place = add(inside, 'div', 'sb-hold__fields'), given = add(inside, 'p', 'sb-hold__given'), end = add(inside, 'p', 'sb-hold__end');
    var kept = add(end, 'span', 'sb-note'), forget = add(end, 'button', 'sb-button sb-button--quiet', 'Forget what was said of this day');
    forget.type = 'button';
    forget.addEventListener('click', function () { K.forget(date()); });
    var why = add(box, 'div', 'sb-hold__why');

    function date() { return options.date || Swardbook.dates.iso(Swardbook.dates.today()); }

    function nameOf(id) { return (fields[id] || rules().questions[id]).name; }

    function say(id, text, settled) {
      clearTimeout(timer);
      if (settled) { K.say(date(), options.task, id, text); } else {
        timer = setTimeout(function () { K.say(date(), options.task, id, text); }, TYPING_MS);
      }
    }

    function build(known) {
      var wanted = specs(ids, known);
      if (asked === Object.keys(wanted).join()) { return; }
      asked = Object.keys(wanted).join();
      place.textContent = '';
      fields = {};
      Object.keys(wanted).forEach(function (id) {
        fields[id] = Swardbook.holdField.field(prefix + '-' + id, wanted[id], function (text, settled) { say(id, text, settled); });
        place.appendChild(fields[id].root);
      });
    }

    function show(found, at) {
      var names = once(found.reasons.filter(function (each) { return each.rule.answer === found.answer; }).map(function (each) {
        return rules().holds[each.hold].name;
      }));
      var could = {};
      found.notKnown.forEach(function (each) {
        var id = fieldOf(each.question);
        could[id] = could[id] === 'hold' ? 'hold' : each.could;
      });
      last = { answer: found.answer, words: capital(rules().answers[found.answer]), names: names, open: Object.keys(could).map(nameOf) };
      headline(last);
      Object.keys(fields).forEach(function (id) { fields[id].open(COULD[could[id]] || ''); });
      why.textContent = '';
      reasons(found);
      unknowns(could);
      rest(found);
      keeping(at);
    }

    function headline(now) {
      var more = now.names.length ? now.names.join('; ') + '.'
        : now.answer === 'go' ? 'Nothing that is asked here stands against it.'
          : 'Say what the day is like: ' + (now.open.length > FEW ? now.open.length + ' questions are open.' : now.open.map(small).join(', ') + '.');
      if (said.textContent === now.words + '. ' + more) { return; }
      answer.className = 'sb-hold__answer sb-hold__answer--' + now.answer;
      sign.textContent = '';
      sign.appendChild(shape(now.answer));
      said.textContent = '';
      add(said, 'strong', 'sb-hold__word', now.words);
      add(said, 'span', 'sb-hidden', '. ');
      add(said, 'span', 'sb-hold__names', more);
    }

    function reasons(found) {
      if (!found.reasons.length) { return; }
      var list = add(why, 'ul', 'sb-hold__reasons');
      found.reasons.forEach(function (each) { reason(list, each); });
    }

    /* What nobody has said yet, while the questions are folded; each a way to its field. */
    function unknowns(could) {
      Object.keys(COULD).forEach(function (gravest) {
        var several = Object.keys(could).filter(function (id) { return could[id] === gravest; });
        if (!several.length) { return; }
        add(why, 'p', 'sb-hold__open', COULD[gravest] + '.');
        var list = add(why, 'ul', 'sb-chips sb-hold__open');
        several.forEach(function (id) {
          var button = add(add(list, 'li'), 'button', 'sb-button sb-button--quiet', nameOf(id));
          button.type = 'button';
          button.addEventListener('click', function () {
            day.open = true;
            if (fields[id]) { fields[id].focus(); }
          });
        });
      });
    }

    function rest(found) {
      var quiet = found.quiet.map(function (id) { return rules().holds[id].name; });
      if (quiet.length) { add(why, 'p', 'sb-hold__quiet', 'Asked, and no reason to wait: ' + quiet.map(small).join('; ') + '.'); }
      var cautions = once([].concat.apply([], found.reasons.map(function (each) { return rules().holds[each.hold].cautions; })));
      if (!cautions.length) { return; }
      var line = add(why, 'p', 'sb-hold__cautions', 'Take care: ');
      cautions.forEach(function (id, number) {
        if (number) { line.appendChild(document.createTextNode(', ')); }
        link(line, 'cautions/' + id + '.html', rules().cautions[id]);
      });
    }

    function keeping(at) {
      kept.textContent = !at ? 'What you say is kept on this device only, for this date.'
        : K.lasts() ? 'Kept on this device only, last changed at ' + at + '. ' : 'This browser keeps nothing for this page, so it lasts until the page is closed. ';
      forget.hidden = !at;
    }

    function refresh() {
      var known = typed(options.known), now = K.of(date(), options.task), answers = {};
      build(known);
      Object.keys(fields).forEach(function (id) {
        answers[id] = now.answers[id] || '';
        if (!fields[id].root.contains(document.activeElement)) { fields[id].show(answers[id]); }
      });
      var read = dayOf(answers, known);
      Object.keys(fields).forEach(function (id) { fields[id].trouble(read.troubles[id]); });
      title.textContent = 'What the day is like: ' + Swardbook.dates.words(Swardbook.dates.fromIso(date()));
      var told = Object.keys(known).filter(function (id) { return Swardbook.holds.asks(ids).indexOf(id) >= 0; });
      given.textContent = told.length ? 'From ' + (options.from || 'the job') + ': ' + told.map(function (id) {
        return small(rules().questions[id].name) + ' ' + (known[id] === 'none' ? rules().questions[id].none : known[id]);
      }).join('; ') + '.' : '';
      show(Swardbook.holds.answer(ids, read), now.at);
      if (options.onAnswer) { options.onAnswer(last); }
    }

    var leave = K.follow(refresh);
    function woken() { if (!document.hidden) { refresh(); } }
    document.addEventListener('swardbook:units', refresh);
    document.addEventListener('visibilitychange', woken); /* A phone that slept through midnight. */
    refresh();
    day.open = options.open !== false && last.answer === 'ask';
    return {
      update: function (changed) { Object.assign(options, changed); refresh(); },
      answer: function () { return last; },
      remove: function () {
        clearTimeout(timer);
        leave();
        document.removeEventListener('swardbook:units', refresh);
        document.removeEventListener('visibilitychange', woken);
        element.textContent = '';
      }
    };
  }

  function start(part) {
    if (!rules()) { return; } /* Its rules are not on this page: they stay as printed. */
    var live = part.querySelector('[data-hold=live]');
    if (!mount(live, { task: part.getAttribute('data-task') })) { return; }
    part.querySelector('[data-hold=rules]').open = false;
  }

  window.Swardbook = window.Swardbook || {};
  Swardbook.holdOrGo = { mount: mount };

  /* This script stands in the page, and may be read before the one that every page has. */
  function begin() { Swardbook.component('hold-or-go', start); }
  if (Swardbook.component) { begin(); } else { window.addEventListener('load', begin); }
})();
