/* The inspection sheet on screen: each answer shows at once what it changes and why. Answers stay on this device, as one sheet of
   {head, answers, ticks} (inspection-kept.js). inspection-findings.js does the thinking. */
(function () {
  'use strict';
  var GROUPS = [['stops', 'Stop'], ['softened', 'Work more gently'], ['leftOut', 'Leave out'], ['chosen', 'Do, where the plan leaves it open'], ['added', 'Add'], ['notes', 'Keep in mind']];

  var each = Swardbook.each;

  function shown(part) { return part.textContent.replace(/\s+/g, ' ').trim(); }
  function own(object, id) { return Swardbook.own(object, id) ? object[id] : ''; }

  function start(root) {
    var spec = Swardbook.inspectionSheet;
    if (!spec) return; /* Its questions are not on this page: the form stays as printed. */
    var boxes = {}, ids = spec.questions.map(function (question) { return question.id; });
    var state = root.querySelector('[data-part=state]'), sum = root.querySelector('[data-part=sum]');
    var copy = root.querySelector('[data-part=copy]'), empty = root.querySelector('[data-part=empty]'), byHand = root.querySelector('[data-part=by-hand]');
    var copyWords = copy.textContent, emptyWords = empty.textContent, emptied = null;
    var rows = Swardbook.inspectionKept, before = {}, updated = '', strange = {}, noticed = {};
    each(root, '[data-question]', function (box) { boxes[box.getAttribute('data-question')] = box; });
    function part(id, name) { return boxes[id].querySelector('[data-part=' + name + ']'); }
    function field(id) { return boxes[id].querySelector('.sb-inspection__measure'); }
    function usual(question) { return Swardbook.readerUnits.of(question.unit, question.us); }

    function answers() {
      var found = {};
      ids.forEach(function (id) {
        var picked = field(id) || boxes[id].querySelector('input:checked');
        if (picked && picked.value.trim()) found[id] = picked.value.trim();
        else if (!picked && strange[id]) found[id] = strange[id];
      });
      return found;
    }

    /* What stands in the form: {head, answers, ticks}. */
    function filled() {
      var head = {}, ticks = {};
      each(root, '[data-head]', function (input) { if (input.value) head[input.getAttribute('data-head')] = input.value; });
      each(root, '[data-tick]', function (input) { if (input.checked) ticks[input.getAttribute('data-tick')] = 'yes'; });
      return { head: head, answers: answers(), ticks: ticks };
    }

    /* A field that is being typed in is left to whoever types. */
    function type(input, text) { if (input !== document.activeElement && input.value !== text) input.value = text; }

    function fill(kept) {
      each(root, '[data-head]', function (input) { type(input, own(kept.head, input.getAttribute('data-head'))); });
      each(root, '[data-tick]', function (input) { input.checked = own(kept.ticks, input.getAttribute('data-tick')) === 'yes'; });
      ids.forEach(function (id) {
        if (field(id)) type(field(id), own(kept.answers, id));
        else {
          each(boxes[id], 'input', function (input) { input.checked = input.value === own(kept.answers, id); });
          strange[id] = boxes[id].querySelector('input:checked') ? '' : own(kept.answers, id); /* Told as an answer that is none. */
        }
      });
      before = filled();
    }

    function keep() { rows.keep(spec, before, filled()); }

    function outcome(key) { return root.querySelector('[data-outcome="' + key + '"]'); }
    function said(key, name) { var found = outcome(key).querySelector('[data-part=' + name + ']'); return found ? shown(found) : ''; }

    /* One thing that changes, as a list item: what, then why. */
    function item(key, before) {
      var row = Swardbook.element('li', 'sb-inspection__outcome sb-inspection__outcome--' + outcome(key).getAttribute('data-effect'));
      if (before) row.appendChild(Swardbook.element('strong', 'sb-inspection__effect', before + ' '));
      row.appendChild(Swardbook.element('span', '', said(key, 'say') + ' '));
      if (said(key, 'step')) row.appendChild(Swardbook.element('span', 'sb-inspection__step', said(key, 'step') + ' '));
      row.appendChild(Swardbook.element('span', 'sb-inspection__because', said(key, 'because')));
      return row;
    }

    function showQuestion(question, out, given) {
      var found = part(question.id, 'found'), trouble = part(question.id, 'trouble'), clear = part(question.id, 'clear');
      var keys = out.found.filter(function (key) { return key.slice(0, key.lastIndexOf(':')) === question.id; });
      var list = Swardbook.element('ul', 'sb-inspection__outcomes');
      keys.forEach(function (key) { list.appendChild(item(key, said(key, 'effect'))); });
      found.textContent = '';
      if (keys.length) found.appendChild(list);
      else if (given[question.id] && !out.troubles[question.id]) found.appendChild(Swardbook.element('p', 'sb-inspection__nothing', 'Nothing changes.'));
      found.hidden = !found.firstChild;
      trouble.textContent = out.troubles[question.id] || '';
      trouble.hidden = !trouble.textContent;
      clear.hidden = Boolean(field(question.id)) || !given[question.id];
      if (field(question.id)) Swardbook.markInvalid(field(question.id), trouble.textContent);
    }

    function keysOf(out, group) {
      if (['softened', 'leftOut', 'chosen'].indexOf(group) < 0) return out[group];
      var keys = [];
      Object.keys(out[group]).forEach(function (task) { keys = keys.concat(group === 'softened' ? out.softened[task].why : out[group][task]); });
      return out.found.filter(function (key) { return keys.indexOf(key) >= 0; });
    }

    function showSum(out) {
      var stops = out.stops.length;
      sum.textContent = '';
      GROUPS.forEach(function (group) {
        var keys = keysOf(out, group[0]);
        if (!keys.length) return;
        var list = Swardbook.element('ul', 'sb-inspection__outcomes');
        var byTask = group[0] === 'softened' || group[0] === 'leftOut';
        keys.forEach(function (key) { list.appendChild(item(key, byTask ? tasksOf(key, out, group[0]) : '')); });
        sum.appendChild(Swardbook.element('h3', 'sb-inspection__group', group[1]));
        sum.appendChild(list);
      });
      if (out.unanswered.length) {
        var open = Swardbook.element('ul', 'sb-inspection__open');
        out.unanswered.forEach(function (id) {
          var link = Swardbook.element('a', '', spec.questions[ids.indexOf(id)].ask);
          link.href = '#' + boxes[id].id;
          open.appendChild(Swardbook.element('li')).appendChild(link);
        });
        sum.appendChild(Swardbook.element('h3', 'sb-inspection__group', 'Not looked at yet'));
        sum.appendChild(open);
      }
      var words = Swardbook.inspection.stopWords(stops) || 'Nothing stops the job so far.';
      state.textContent = words + (out.unanswered.length ? ' Not looked at yet: ' + out.unanswered.length + ' of ' + ids.length + '.' : ' Everything has been looked at.');
      state.classList.toggle('sb-inspection__state--stop', stops > 0);
    }

    /* The names of an outcome's tasks that this group still holds: one that is left out is not softened as well. */
    function tasksOf(key, out, group) {
      var links = outcome(key).querySelectorAll('[data-part=effect] a');
      var question = spec.questions[ids.indexOf(key.slice(0, key.lastIndexOf(':')))];
      return question.outcomes[+key.slice(key.lastIndexOf(':') + 1)].tasks.map(function (task, at) {
        return out[group][task] ? shown(links[at]) : null;
      }).filter(Boolean).join(', ') + ':';
    }

    function update() {
      var given = answers(), same = JSON.stringify([given, Swardbook.readerUnits.us()]);
      if (same === updated) return; /* Nothing is read out twice. */
      updated = same;
      var out = Swardbook.inspection.findings(spec, given, usual);
      spec.questions.forEach(function (question) { showQuestion(question, out, given); });
      showSum(out);
    }

    function changed() {
      copy.textContent = copyWords;
      byHand.hidden = true;
      emptied = null;
      empty.textContent = emptyWords;
      keep();
      update();
    }

    /* The unit goes beside a bare number once it is typed, so that switching units cannot change what was measured. */
    function withUnit(input) {
      var question = spec.questions[ids.indexOf(input.closest('[data-question]').getAttribute('data-question'))];
      input.value = Swardbook.readerUnits.beside(input.value, usual(question));
    }

    function answerWords(id, given) {
      var picked = boxes[id].querySelector('input:checked');
      return given[id] ? (picked ? shown(picked.parentNode) : given[id]) : '–';
    }

    function asText() {
      var given = answers(), lines = [shown(document.querySelector('h1'))];
      each(root, '[data-head]', function (input) { if (input.value) lines.push(shown(root.querySelector('label[for="' + input.id + '"]')) + ': ' + input.value); });
      lines.push('', shown(state));
      each(sum, 'h3', function (title) {
        lines.push('', shown(title));
        each(title.nextElementSibling, 'li', function (row) { lines.push('- ' + shown(row)); });
      });
      lines.push('', 'Answers');
      spec.questions.forEach(function (question) { lines.push(question.ask + ' ' + answerWords(question.id, given)); });
      return lines.join('\n');
    }

    function offer(text) {
      var area = byHand.querySelector('textarea');
      area.value = text;
      byHand.hidden = false;
      area.select();
    }

    root.addEventListener('input', changed);
    root.addEventListener('change', function (event) {
      if (event.target.classList.contains('sb-inspection__measure')) { withUnit(event.target); changed(); }
    });
    root.addEventListener('submit', function (event) { event.preventDefault(); });
    document.addEventListener('swardbook:units', update);
    each(root, '[data-part=clear]', function (button) {
      button.addEventListener('click', function () {
        var box = button.closest('[data-question]');
        each(box, 'input', function (input) { input.checked = false; });
        strange[box.getAttribute('data-question')] = '';
        changed();
        box.querySelector('input').focus();
      });
    });
    copy.addEventListener('click', function () {
      var text = asText();
      Swardbook.copy(text, function () { copy.textContent = 'Copied'; }, function () { offer(text); });
    });
    root.querySelector('[data-part=print]').addEventListener('click', function () { window.print(); });
    empty.addEventListener('click', function () {
      var back = emptied, was = filled(), old = before;
      /* What was answered since then stays. */
      fill(back ? Swardbook.shape.merged({}, was, back) : {});
      before = old;
      changed();
      if (back) return;
      emptied = was;
      empty.textContent = 'Bring back what was cleared';
    });

    function show() {
      fill(rows.read());
      update();
    }

    /* Said of the sheet that is being filled in: a lawn's, or that of no lawn. */
    function notify() {
      var name = Swardbook.lawns.chosen() ? 'inspections' : 'inspection';
      if (noticed[name]) return;
      noticed[name] = true;
      Swardbook.keptNotice(root, name, function () { return { name: 'inspection.txt', kind: 'text/plain', text: asText() }; });
    }

    rows.follow(show);
    document.addEventListener('swardbook:lawn-chosen', notify);
    /* What another tab answered meanwhile shows once the field is left. */
    root.addEventListener('focusout', function () { window.setTimeout(show, 0); });
    notify();
    fill(rows.read());
    root.querySelector('[data-part=plain]').hidden = true;
    state.hidden = false;
    root.querySelector('[data-part=ways]').hidden = false;
    update();
  }

  /* The estimate as text for a message. It is complete without this; only the button needs a script. */
  function startEstimate(root) {
    var copy = root.querySelector('[data-part=copy]'), text = root.querySelector('[data-part=text]');
    if (!navigator.clipboard) return;
    copy.hidden = false;
    copy.addEventListener('click', function () {
      var lines = [];
      each(text, 'h3, p', function (line) { if (line.tagName === 'H3') lines.push(''); lines.push(shown(line)); });
      Swardbook.copy(lines.join('\n').trim(), function () { copy.textContent = 'Copied'; }, function () {
        window.getSelection().selectAllChildren(text); /* Refused: ready to be copied by hand. */
      });
    });
  }

  Swardbook.component('inspection-sheet', start);
  Swardbook.component('inspection-estimate', startEstimate);
})();
