/* The planner's form: what the reader chooses, ticks and puts off, worked out and shown at once. */
(function () {
  'use strict';

  function start(root) {
    var book = Swardbook.jobs.book();
    if (!book) { return; } /* The plans are not on this page: the example stays as printed. */
    var P = Swardbook.jobPlan, S = Swardbook.jobSteps, L = Swardbook.jobLists, K = Swardbook.jobsKept, W = Swardbook.jobWords;
    var V = Swardbook.jobInspection, turn = 0, sheetDay = null, last = null, notes = [], allRain = false, shownId = null, another = false;
    var targets = { jobs: root.dataset.jobs, calculators: root.dataset.calculators, inspection: root.dataset.inspection.split(' ').filter(Boolean) };
    function part(name) { return root.querySelector('[data-part="' + name + '"]'); }
    function choice(name) { return root.querySelector('[data-choice="' + name + '"]'); }
    var usual = {
      plan: choice('plan').value, grass: choice('grass').value, place: choice('place').value, site: choice('site').value, on: choice('on').value,
      area: Swardbook.quantity.read(choice('area').value, 'm2'), name: '', start: root.dataset.start, done: {}, put: {}, without: [], chosen: [], rain: {},
      typed: choice('area').value, visit: {}, key: ''
    };
    var desk = new Swardbook.jobDesk.Desk(root, usual, function () { told([]); address(); update(true); }, function () { changed(true); });
    function job() { return desk.now; }

    /* What is said above the job; one that this book cannot work out comes first. */
    function told(sentences) { notes = desk.strange().concat(sentences); }

    function notice() {
      part('notice').textContent = notes.join(' ');
      part('notice').hidden = !notes.length;
    }

    /* What is being typed is left alone while the job stays the same. */
    function free(field) { return field !== document.activeElement || another; }

    function showList() {
      if (free(part('name'))) { part('name').value = job().name; }
      Swardbook.jobDesk.options(part('kept'), desk.list().map(function (each) { return [each[0], Swardbook.jobDesk.nameOf(each[1], book)]; }), desk.chosen());
    }

    /* A job that this book cannot work out can be sent on and taken off, and no more. */
    function showOnly(known) {
      [part('form'), part('worked')].forEach(function (each) { each.hidden = !known; });
      Swardbook.each(root, '[data-act^=print], [data-act=calendar], [data-act=link]', function (each) { each.hidden = !known; });
      if (!known) { part('sheet').hidden = true; }
    }

    function showForm(area) {
      var now = job();
      choice('grass').value = now.grass;
      choice('place').value = now.place;
      Swardbook.jobDesk.options(choice('plan'), book.grasses[now.grass].plans.map(function (id) { return [id, book.plans[id].name]; }), now.plan);
      Swardbook.jobDesk.options(choice('site'), book.places[now.place].sites.map(function (id) { return [id, book.sites[id]]; }), now.site);
      part('site-note').hidden = book.places[now.place].sites.length > 1;
      if (free(choice('on'))) { choice('on').value = now.on; }
      if (area && free(choice('area'))) { choice('area').value = now.typed || +now.area.toFixed(4) + ' m2'; trouble(''); }
      if (free(part('day-sheet-start'))) { part('day-sheet-start').value = now.start; }
    }

    function trouble(sentence) {
      part('area-trouble').textContent = sentence;
      part('area-trouble').hidden = !sentence;
      Swardbook.markInvalid(choice('area'), sentence);
    }

    /* What is not there yet is fetched first; a later choice wins over an earlier one that comes late. */
    function update(area) {
      var mine = turn += 1, now = job(), strange = desk.strange();
      another = shownId !== null && shownId !== desk.id;
      shownId = desk.id;
      showList();
      showOnly(!strange.length);
      if (strange.length) { notice(); return; }
      showForm(area);
      (function ready() {
        var wanted = Swardbook.jobOut.needed(now, targets);
        if (!wanted.length) { work(now); return; }
        Promise.all(wanted.map(Swardbook.load)).then(function () { if (mine === turn) { ready(); } }, function () {
          if (mine !== turn) { return; }
          notes = ['The data of this job could not be read, so what you see below is another job. Try again.'];
          notice();
        });
      })();
    }

    function inspected(now) { return Swardbook.jobOut.inspected(now, targets); }

    /* A job worked out, and shown nowhere yet. */
    function worked(now) { return Swardbook.jobOut.worked(now, targets); }

    function work(now) {
      last = worked(now);
      show(last.out, last.plan, now);
      showInspection(now);
      notice();
    }

    function show(out, plan, now) {
      var window_ = out.window, titles = {};
      plan.kept.forEach(function (step) { titles[step.id] = step.title; });
      part('what').textContent = book.plans[now.plan].name + ': ' + book.grasses[now.grass].name + ', ' + book.places[now.place].name + ', ' + W.day(now.on);
      Swardbook.words(part('area'), [W.area(now.area)]);
      S.list(part('choose'), book.plans[now.plan].choose, function (row, text) { row.textContent = text; });
      ['first', 'first-buy'].forEach(function (name) { S.list(part(name), out.first, function (row, text) { Swardbook.words(row, text); }); });
      part('answer').classList.toggle('sb-job__answer--outside', !window_.inside);
      part('headline').textContent = W.headline(window_);
      Swardbook.words(part('window-why'), window_.why);
      part('edges').textContent = W.edges(window_);
      part('frost').textContent = L.said('frost', { chance: W.percent(window_.frost_chance_four_weeks) });
      S.list(part('settling'), out.first_possible, function (row, each) { row.textContent = W.settles(each, titles[each.step]); });
      S.list(part('then'), window_.what_then, function (row, text) { row.textContent = text; });
      part('then-box').hidden = !window_.what_then.length;
      if (!window_.inside || out.first.length) { part('then-box').open = true; }
      S.show(root, out, plan, now);
      S.next(part('next'), out, now);
      S.say(root, 'moves', S.moves(out, plan, now));
      S.list(part('left-out'), out.left_out, leftOut);
      part('left-out-box').hidden = !out.left_out.length;
      L.shopping(root, out, plan);
      L.gear(root, out);
      L.daySheet(root, out, now, sheetDay);
      L.water(root, out);
      Swardbook.jobRain.show(root, out, now.rain, allRain);
      L.price(root, out);
      Swardbook.jobPrint.sheet(part('sheet'), out, plan, part('what').textContent, W.area(now.area), W.headline(window_), last.seen ? last.seen.stops : []);
      part('sheet').hidden = false;
      var sheet = book.plans[now.plan].aftercare;
      part('handover-box').hidden = !sheet;
      if (sheet) {
        part('handover').textContent = sheet.name;
        part('handover').href = root.dataset.aftercare + sheet.id + '.html#v=1&on=' + Swardbook.jobLists.finished(out) + '&grass=' + now.grass;
        part('maker').href = root.dataset.maker + '#' + Swardbook.jobLists.clientLink(out, now, sheet.id, last.measured);
      }
    }

    function showInspection(now) {
      var device = V.onDevice(), using = inspected(now), same = device && JSON.stringify(device.answers) === JSON.stringify(now.visit);
      part('inspection-box').hidden = !root.dataset.inspection;
      part('inspection-said').textContent = using ? V.sum(last.seen) : device ? 'An inspection is kept on this device, with ' + W.count(Object.keys(device.answers).length, 'answer') + '.'
        : 'No inspection is kept on this device. What the inspection sheet finds can change the steps below.';
      if (using) { V.show(part('inspection-found'), last.seen, last.plan); } else { part('inspection-found').hidden = true; }
      var use = root.querySelector('[data-act=inspection-use]');
      use.hidden = !device || same;
      use.textContent = (using ? 'Use the answers as they are now' : 'Use the inspection') + (device && (device.lawn || device.date) ? ': ' + [device.lawn, device.date].filter(Boolean).join(', ') : '');
      root.querySelector('[data-act=inspection-drop]').hidden = !using;
    }

    function leftOut(row, each) {
      row.textContent = each.title + ': ' + each.why;
      if (job().without.indexOf(each.id) < 0) { return; }
      row.appendChild(Swardbook.button('Bring it back', function () {
        job().without = job().without.filter(function (id) { return id !== each.id; });
        changed();
      }));
    }

    /* A change by hand: kept, put into the address so that a reload comes back to it, and worked out. */
    function changed(area) {
      desk.keep();
      told([]);
      address();
      update(area);
    }

    function address() {
      try {
        window.history.replaceState({ job: desk.id }, '', K.fragment(job()));
      } catch (error) {
        /* A browser may refuse this to a page from a folder; the job is kept all the same. */
      }
    }

    /* A bare number is in the unit that the reader prefers now; with it beside, it stays what it was. */
    function withUnit(text) { return Swardbook.readerUnits.beside(text, areaUnit()); }
    function areaUnit() { return Swardbook.readerUnits.of('m2', 'ft2'); }

    function chosen(name) {
      var now = job();
      if (name === 'area') {
        try {
          var area = Swardbook.quantity.read(choice('area').value, areaUnit());
          if (!Swardbook.kept.isArea(area)) { trouble(Swardbook.lawns.noArea); return; }
          trouble('');
          now.area = area;
          now.typed = withUnit(choice('area').value.trim());
        } catch (problem) {
          trouble(Swardbook.sentenceOf(problem));
          return;
        }
      } else if (name === 'on') {
        if (!Swardbook.kept.isDay(choice('on').value)) { return; }
        now.on = choice('on').value;
      } else { now[name] = choice(name).value; }
      var fixed = K.known(now, usual);
      desk.now = fixed.job;
      changed();
      told(fixed.told);
      notice();
    }

    function stepAct(target) {
      var item = target.closest('[data-step]'), id = item.dataset.step, now = job(), act = target.dataset.act;
      var day = item.querySelector('[data-act=day]');
      if (act === 'day') {
        if (now.done[id] || !Swardbook.kept.isDay(day.value)) { return; } /* Of a step that is done, the tick asks first. */
        now.put[id] = day.value;
      } else if (act === 'later') {
        var to = Swardbook.dates.fromIso(last.out.steps.find(function (step) { return step.id === id; }).date) + (+target.dataset.days);
        now.put[id] = Swardbook.dates.iso(to);
      } else if (act === 'back') { delete now.put[id]; } else if (act === 'without') { now.without.push(id); } else if (act !== 'needed') { return; }
      if (act === 'without' || act === 'needed') { now.chosen = P.chosenWith(last.plan, now.chosen, id, act === 'needed' && target.checked); }
      changed();
      if (act === 'later') { Swardbook.jobHold.told(item, 'Put off to ' + W.day(now.put[id]) + '. ' + S.moves(last.out, last.plan, now)); item.querySelector('[data-part=hold] > summary').focus(); }
      if (act !== 'day') { day.value = (last.out.steps.find(function (step) { return step.id === id; }) || { date: day.value }).date; }
    }

    function choose(id) {
      sheetDay = null;
      desk.open(id);
      told([]);
      address();
      update(true);
    }

    var tools = { root: root, part: part, desk: desk, last: function () { return last; }, choose: choose, drop: function () {
      var removed = desk.drop();
      told([]);
      address();
      update(true);
      return removed;
    } };

    root.addEventListener('change', function (event) {
      var target = event.target;
      if (target.dataset.choice) { chosen(target.dataset.choice); }
      else if (target.closest('[data-step]')) { stepAct(target); }
      else if (target.dataset.act === 'rain') { if (Swardbook.jobRain.take(target, job().rain)) { changed(); } }
      else if (target === part('day-sheet-days')) { sheetDay = target.value; work(job()); }
      else if (target === part('day-sheet-start') && target.value) { job().start = target.value.slice(0, 5); changed(); }
      else if (target === part('name')) { job().name = target.value.trim().slice(0, Swardbook.contract.kept.longest.job); changed(); }
      else if (target === part('kept')) { if (target.value) { choose(target.value); } }
    });
    root.addEventListener('input', function (event) { if (event.target === choice('area')) { chosen('area'); } });
    root.addEventListener('click', function (event) {
      var button = event.target.closest('button[data-act]');
      if (button && button.closest('[data-step]')) { stepAct(button); }
      else if (button && button.dataset.act === 'rain-all') { allRain = true; changed(); }
      else if (button && button.dataset.act === 'inspection-use') { job().visit = V.onDevice().answers; changed(); part('inspection-said').focus(); }
      else if (button && button.dataset.act === 'inspection-drop') { job().visit = {}; changed(); part('inspection-said').focus(); }
    });
    root.addEventListener('submit', function (event) { event.preventDefault(); });

    function fromAddress() {
      var found = K.particulars(window.location.hash);
      if (found === null) { told(['This link is damaged, so it shows no job of its own.']); return; }
      if (!Object.keys(found).length) { return; }
      var asked = Object.assign(desk.usual(), found.area ? { typed: '' } : {}, found);
      if (found.plan && !found.grass && book.plans[found.plan] && book.grasses[asked.grass].plans.indexOf(found.plan) < 0) { asked.grass = ''; }
      var fixed = K.known(asked, usual), same = desk.rows.all().filter(function (each) { return K.fragment(each.row) === K.fragment(fixed.job); })[0];
      if (same) { desk.open(same.id); } else { desk.draft(fixed.job); }
      told(fixed.told);
    }

    var shownBefore = desk.begin();
    told([]);
    if (!shownBefore) { fromAddress(); }
    desk.listChanged = showList;
    if (root.dataset.inspection) { Swardbook.lawns.follow(function () { if (last && !desk.strange().length) { showInspection(job()); } }); }
    window.addEventListener('hashchange', function () { told([]); fromAddress(); update(true); });
    part('plain').hidden = true;
    part('form').hidden = false;
    part('keep-box').hidden = false;
    if (Swardbook.jobFiles) { Swardbook.jobFiles(tools); }
    Swardbook.jobTick.start({ root: root, desk: desk, last: tools.last, worked: worked, changed: changed });
    update(true);
  }

  Swardbook.component('job-planner', start);
})();
