/* A year of visits to the chosen lawn: planned by the works that the reader ticks, kept with the lawn, and followed from visit to visit. */
(function () {
  'use strict';
  var add = Swardbook.add, own = Swardbook.own, S = Swardbook.contract.programme.sentences, CENTS = Swardbook.contract.programme.cents, UNTIL_QUIET_MS = 150;

  function said(name, values) { return Swardbook.filled(S[name], values || {}); }
  function counted(number, one) { return said(number === 1 ? one : one + 's', { count: number }); }
  function movedWords(weeks) { return weeks ? said(weeks > 0 ? 'later' : 'earlier', { weeks: counted(Math.abs(weeks), 'week') }) : said('on_time'); }

  function start(root) {
    var parts = Swardbook.parts(root), tasks = JSON.parse(root.dataset.tasks), targets = JSON.parse(root.dataset.targets), K = Swardbook.programmeKept, W = Swardbook.jobWords;
    var terms = { rate: +root.dataset.rate, inside: root.dataset.inside === 'true', valid_days: +root.dataset.validDays };
    var lawn = null, out = null, formOf = '', undo = null, turn = 0, moving = '';

    function name(task) { return own(tasks, task) ? tasks[task] : task; }
    function cash(cents) { return W.money(cents / CENTS); }
    function iso(day) { return Swardbook.dates.iso(day); }
    function dayWords(day) { return W.day(typeof day === 'string' ? day : iso(day)); }
    function today() { return iso(Swardbook.dates.today()); }

    function say(words, back, entry) {
      undo = back || null;
      parts.told.textContent = words;
      parts.undo.hidden = !back;
      parts.record.hidden = !entry || !targets.record;
      if (entry) { parts.record.href = targets.record + '#' + recordAddress(entry); }
      if (words) { parts.told.focus({ preventScroll: true }); }
    }

    function recordAddress(entry) {
      return Object.keys(entry).reduce(function (sum, column) { return sum + '&' + column + '=' + encodeURIComponent(entry[column]); }, Swardbook.fragment.begin);
    }

    function trouble(words) {
      parts.trouble.textContent = words;
      parts.trouble.hidden = !words;
    }

    /* --- the form --- */
    function asked() {
      var ticked = Swardbook.list(parts.works.querySelectorAll('input:checked')).map(function (each) { return each.value; });
      return { wanted: +parts.wanted.value, start: Swardbook.kept.isDay(parts.start.value) ? parts.start.value : today(), tasks: ticked, mowing: parts.mowing.checked };
    }

    function box(task, grass, ticked) {
      var label = add(parts.works, 'label', 'sb-visits__work'), input = add(label, 'input'), words = add(label, 'span', '', name(task));
      input.type = 'checkbox';
      input.value = task;
      input.checked = ticked;
      if (grass.tasks[task].where) { add(words, 'span', 'sb-note', ' only where needed: ' + grass.tasks[task].where); }
    }

    /* Anew for another lawn; what the reader ticked stays for the same one. */
    function fillForm(data) {
      var of = [lawn.id, lawn.grass, lawn.place, lawn.site].join(), kept = lawn.programme, seen = [];
      if (formOf === of) { return; }
      formOf = of;
      parts.works.textContent = '';
      parts.wanted.value = String(kept ? Math.max(2, Math.min(kept.wanted, parts.wanted.options.length + 1)) : root.querySelector('option[selected]').value);
      parts.start.value = kept ? kept.start : today();
      parts.mowing.checked = Boolean(kept && kept.cuts);
      Swardbook.programmeOut.worksOf(data.site).forEach(function (work) {
        if (seen.indexOf(work.task) >= 0) { return; }
        seen.push(work.task);
        box(work.task, data.grass, kept ? (kept.tasks || []).indexOf(work.task) >= 0 : !data.grass.tasks[work.task].where);
      });
      parts['mowing-words'].textContent = K.cutsWords(data.site.cuts.length);
      parts.mowing.parentNode.hidden = !data.site.cuts.length;
      parts.plan.open = !kept;
    }

    /* --- what the form comes to --- */
    function line(list, each, data) {
      var item = add(list, 'li', 'sb-visits__visit'), head = add(item, 'strong', '', dayWords(each.day));
      head.after(' ');
      add(item, 'span', '', each.tasks.map(name).join(', '));
      if (each.price) { add(item, 'span', 'sb-note', ' ' + [W.spent(each.price.minutes), cash(each.price.total)].filter(Boolean).join(', ')); }
      each.placed.forEach(function (one) {
        var several = out.works.some(function (other) { return other.task === one.work.task && other.rule !== one.work.rule; });
        var told = (several ? data.grass.tasks[one.work.task].says[one.work.rule] + ' ' : '') + (one.moved ? Swardbook.capital(movedWords(one.moved)) + '.' : '');
        if (told) { add(item, 'p', 'sb-note', name(one.work.task) + ': ' + Swardbook.small(told)); }
      });
    }

    function beside(data) {
      var list = Swardbook.element('ul', 'sb-said');
      out.own.forEach(function (work) {
        add(list, 'li', '', said('own', { day: dayWords(Swardbook.visitGroups.visitDay(work.week, out.start)), task: name(work.task), why: said(work.limit) }));
      });
      if (out.renovation) { add(list, 'li', '', said('renovation', { plan: Swardbook.programmePaper.planName(out.renovation.plan), day: dayWords(out.renovation.day) })); }
      data.site.routine.forEach(function (each) {
        add(list, 'li', '', said(each[1] === 1 ? 'weekly' : 'routine', { task: name(each[0]), weeks: counted(each[1], 'week'), times: counted(each[2], 'time') }));
      });
      data.site.shed.forEach(function (each) { add(list, 'li', '', said('shed', { task: name(each[0]), day: dayWords(Swardbook.visitGroups.visitDay(each[1], out.start)) })); });
      parts.beside.textContent = '';
      if (!list.childNodes.length) { return; }
      add(parts.beside, 'h3', '', 'In none of these visits');
      parts.beside.appendChild(list);
    }

    function sums() {
      parts.sums.textContent = '';
      if (!out.price) { add(parts.sums, 'p', 'sb-note', 'This practice’s file has no prices, so the year has none.'); return; }
      var table = add(parts.sums, 'table'), body = add(table, 'tbody');
      var rows = [[counted(out.visits.length, 'visit'), out.visits.reduce(function (sum, each) { return sum + each.price[terms.inside ? 'total' : 'before_tax']; }, 0)]];
      if (out.price.cut) { rows.push([K.cutsWords(out.cuts) + ', ' + cash(out.price.cut[terms.inside ? 'total' : 'before_tax']) + ' each', out.cuts * out.price.cut[terms.inside ? 'total' : 'before_tax']]); }
      if (!terms.inside) { rows.push(['Before tax', out.price.before_tax]); }
      rows.concat([[root.dataset.tax, out.price.tax], ['In the year, ' + out.price.currency, out.price.total]]).forEach(function (each) {
        var row = add(body, 'tr');
        add(row, 'th', '', each[0]).scope = 'row';
        add(row, 'td', '', cash(each[1]));
      });
    }

    function plan(data) {
      out = Swardbook.programmeOut.planned(lawn, asked());
      parts.fits.textContent = said(out.own.length ? 'left' : 'fits', { visits: counted(out.visits.length, 'visit') });
      parts.list.textContent = '';
      var list = null, season = null;
      out.visits.forEach(function (each) {
        if (each.season !== season) { add(parts.list, 'h3', '', each.season); list = add(parts.list, 'ul', 'sb-visits__list'); }
        season = each.season;
        line(list, each, data);
      });
      beside(data);
      sums();
      parts.keep.textContent = (lawn.programme ? 'Keep this year instead, on ' : 'Keep this year on ') + lawn.code;
      parts.keep.disabled = !out.visits.length;
    }

    /* --- the year that is kept --- */
    function act(parent, words, about, run) {
      var made = parent.appendChild(Swardbook.button(words, run));
      add(made, 'span', 'sb-hidden', ' ' + about);
    }

    function keptLine(list, each) {
      var visit = each.visit, state = K.stateOf(visit), item = add(list, 'li', 'sb-visits__visit'), about = dayWords(each.on), quote = lawn.programme.quote;
      item.dataset.visit = each.id;
      item.dataset.state = state;
      add(item, 'strong', '', about).after(' ');
      if (visit.plan) {
        var link = add(item, 'a', '', Swardbook.programmePaper.planName(visit.plan));
        link.href = targets.planner + Swardbook.jobsKept.fragment({ plan: visit.plan, grass: lawn.grass, place: lawn.place, site: lawn.site || 'open', area: Swardbook.lawns.area(lawn), on: each.on });
        add(item, 'span', 'sb-note', ' a job of its own, in the planner');
      } else { add(item, 'span', '', (visit.tasks || []).map(name).join(', ')); }
      if (quote && quote.lines && quote.lines[each.id]) { add(item, 'span', 'sb-note', ' ' + cash(quote.lines[each.id].amount + (quote.inside ? 0 : quote.lines[each.id].tax))); }
      if (state) { add(item, 'span', 'sb-note', ' ' + state); } else if (each.on < today()) { add(item, 'strong', 'sb-visits__late', ' overdue'); }
      var ways = add(item, 'div', 'sb-visits__ways');
      if (state) { act(ways, 'Not ' + state + ' after all', about, function () { change(each.id, 'It is still to be done.', function (one) { delete one.done; delete one.skipped; }); }); return; }
      act(ways, 'Done', about, function () { done(each); });
      var more = add(ways, 'details'), field = null;
      more.open = moving === each.id;
      more.addEventListener('toggle', function () { moving = more.open ? each.id : moving === each.id ? '' : moving; });
      add(more, 'summary', '', 'Another day, or skip it');
      var inside = add(more, 'div', 'sb-visits__ways');
      field = add(inside, 'input', 'sb-input');
      field.type = 'date';
      field.value = each.on;
      field.setAttribute('aria-label', 'Another day for the visit of ' + about);
      act(inside, 'Move it', about, function () {
        if (!Swardbook.kept.isDay(field.value)) { say('Say to which day.'); return; }
        moving = '';
        change(each.id, 'Moved to ' + dayWords(field.value) + '. The other visits stay.', function (one) { if (field.value === one.on) { delete one.put; } else { one.put = field.value; } });
      });
      act(inside, 'Skip it', about, function () { moving = ''; change(each.id, 'Skipped. The price that was agreed stays as it is.', function (one) { one.skipped = true; }); });
    }

    function change(id, words, act_) { say(words, K.changeVisit(lawn, id, act_)); }

    function done(each) {
      var day = each.on < today() ? each.on : today(), found = K.markDone(lawn, each.id, day);
      if (!found) { return; }
      var told = found.entries ? ' ' + (found.entries === 1 ? 'An entry is' : found.entries + ' entries are') + ' in the work record.' : '';
      say('Done on ' + dayWords(day) + '.' + told + (found.open ? ' One task wants its product written down.' : ''), found.back, found.open);
    }

    function showKept() {
      var programme = lawn.programme, quote = programme && programme.quote;
      parts.kept.hidden = !programme;
      parts['kept-list'].textContent = '';
      if (!programme) { parts.sheet.hidden = true; return; }
      parts['kept-title'].textContent = 'The year from ' + dayWords(programme.start);
      parts['kept-sum'].textContent = quote ? cash(quote.total) + ' ' + quote.currency + ' in the year' : '';
      parts['kept-note'].textContent = quote ? 'As offered on ' + dayWords(quote.on) + ', with tax' + (quote.accepted ? '; accepted on ' + dayWords(quote.accepted) : '') + '. It does not change with your prices.' : '';
      root.querySelector('[data-act=accepted]').hidden = !quote || Boolean(quote.accepted);
      var list = null, season = null, data = Swardbook.programmeOut.dataOf(lawn);
      K.inOrder(programme).forEach(function (each) {
        var now = data ? Swardbook.programmeOut.seasonOf(data.site, each.on) : '';
        if (!list || now !== season) {
          if (now) { add(parts['kept-list'], 'h3', '', now); }
          list = add(parts['kept-list'], 'ul', 'sb-visits__list');
        }
        season = now;
        keptLine(list, each);
      });
      if (programme.cuts) { add(parts['kept-list'], 'p', '', K.cutsWords(programme.cuts) + '.'); }
      if (!parts.sheet.hidden) { sheet(); }
    }

    /* --- for the client --- */
    function sheet() {
      var made = Swardbook.programmePaper.letter(lawn, tasks, root.dataset.tax), text = Swardbook.moneyPapers.text(made);
      Swardbook.moneyPapers.show(parts.paper, made);
      parts.text.value = text;
      parts.message.href = 'sms:?&body=' + encodeURIComponent(text);
      parts.mail.href = 'mailto:?subject=' + encodeURIComponent(made.title) + '&body=' + encodeURIComponent(text.replace(/\n/g, '\r\n'));
    }

    function openSheet() {
      targets.money.reduce(function (before, address) { return before.then(function () { return Swardbook.load(address); }); }, Promise.resolve()).then(function () {
        parts.sheet.hidden = false;
        sheet();
        parts.sheet.focus({ preventScroll: true });
        parts.sheet.scrollIntoView();
      }, function () { say('The sheet could not be made. Try again.'); });
    }

    function says(task) {
      var data = Swardbook.programmeOut.dataOf(lawn);
      return data && own(data.grass.tasks, task) ? data.grass.tasks[task].step.say : '';
    }

    var ACTS = {
      keep: function () {
        var row = K.made(out, asked(), terms, tasks), back = K.change(lawn, function (each) { each.programme = row; });
        say(back ? 'The year is kept on ' + lawn.code + '. Today, on the first page, shows its visits.' : lawn.code + ' is no lawn of yours any more.', back);
        parts.plan.open = false;
        parts['kept-title'].scrollIntoView();
      },
      drop: function () { say('The year is taken off ' + lawn.code + '.', K.change(lawn, function (each) { delete each.programme; })); },
      accepted: function () { say('Accepted.', K.change(lawn, function (each) { each.programme.quote.accepted = today(); })); },
      undo: function () {
        var back = undo;
        if (back) { back(); }
        say('Everything is as it was before.');
      },
      sheet: openSheet,
      close: function () { parts.sheet.hidden = true; },
      print: function () {
        document.documentElement.setAttribute('data-print-visits', '');
        window.print();
      },
      copy: function () { Swardbook.copy(parts.text.value, function () { say('Copied.'); }, function () { parts.text.hidden = false; parts.text.select(); }); },
      calendar: function () { Swardbook.download('visits-' + lawn.code + '.ics', 'text/calendar', Swardbook.programmePaper.calendar(lawn, tasks, says)); }
    };

    function show() {
      var data = Swardbook.programmeOut.dataOf(lawn);
      if (!data) { trouble('This book has no year for the grass, the place or the site of ' + lawn.code + '.'); showKept(); return; }
      trouble('');
      showKept();
      parts.plan.hidden = false;
      fillForm(data);
      plan(data);
    }

    function update() {
      var mine = turn += 1, area = null;
      lawn = Swardbook.lawns.chosen();
      parts.none.hidden = Boolean(lawn);
      parts.example.hidden = Boolean(lawn);
      if (!lawn) { parts.kept.hidden = parts.plan.hidden = parts.sheet.hidden = true; trouble(''); return; }
      area = Swardbook.lawns.area(lawn);
      if (area === null || !Swardbook.kept.isArea(area)) {
        parts.plan.hidden = true;
        trouble(lawn.code + ' has no area yet. Write it down on the page of lawns; time and price hang on it.');
        showKept();
        return;
      }
      Swardbook.programmeOut.ready(lawn, targets).then(function () { if (mine === turn) { show(); } }, function () {
        if (mine === turn) { trouble('The data of this lawn could not be read. Open the page again.'); showKept(); }
      });
    }

    var waiting = null;
    parts.form.addEventListener('submit', function (event) { event.preventDefault(); });
    parts.form.addEventListener('input', function () {
      clearTimeout(waiting);
      waiting = setTimeout(function () { var data = lawn && Swardbook.programmeOut.dataOf(lawn); if (data) { plan(data); } }, UNTIL_QUIET_MS);
    });
    root.addEventListener('click', function (event) {
      var button = event.target.closest('button[data-act]');
      if (button && own(ACTS, button.dataset.act)) { ACTS[button.dataset.act](); }
    });
    Swardbook.keptNotice(root, 'lawns', function () {
      var all = Swardbook.lawns.rows().all().map(function (each) { return each.row; });
      return { name: 'lawns.json', kind: 'application/json', text: JSON.stringify({ version: 1, lawns: all }, null, 1) + '\n' };
    });
    Swardbook.lawns.follow(update);
    window.addEventListener('afterprint', function () { document.documentElement.removeAttribute('data-print-visits'); });
    document.addEventListener('swardbook:units', update);
    update();
  }

  Swardbook.component('programme', start);
})();
