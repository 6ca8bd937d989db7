/* The planner's form: what the reader chooses, ticks and puts off, worked out and shown at once. */
(function () {
  'use strict';

  function start(root) {
    var book = Swardbook.jobs.book();
    if (!book) { return; } /* The plans are not on this page: the example stays as printed. */
    var P = Swardbook.jobPlan, S = Swardbook.jobSteps, L = Swardbook.jobLists, K = Swardbook.jobsKept, W = Swardbook.jobWords;
    var V = Swardbook.jobInspection, parts = null, form = null, turn = 0, arriving = window.location.hash, sheetDay = null, last = null, notes = [], allRain = false, shownId = null, another = false,
      shownJob = null;
    function part(name) { return S.part(root, name); }
    var targets = { jobs: root.dataset.jobs, calculators: root.dataset.calculators, inspection: root.dataset.inspection.split(' ').filter(Boolean) };
    function choice(name) { return root.querySelector('[data-choice="' + name + '"]'); }
    var usual = Swardbook.jobForm.usual(root), token = String(Date.now());
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
      if (!known && parts.now !== 'all') { parts.show('client'); }
      S.anew(root, known, function () {
        [part('form'), part('worked'), root.querySelector('.sb-parts'), part('print-parts')].forEach(function (each) { each.hidden = !known; });
        Swardbook.each(root, '[data-act^=print], [data-act=calendar], [data-act=link]', function (each) { each.hidden = !known; });
      });
    }

    /* What is not there yet is fetched first; a later choice wins over an earlier one that comes late. */
    function update(area) {
      var mine = turn += 1, now = job(), strange = desk.strange();
      another = shownId !== null && shownId !== desk.id;
      shownId = desk.id;
      part('move-box').hidden = true; /* What it shows is of the job as it was. */
      if (another) { part('move-told').hidden = root.querySelector('[data-act=move-undo]').hidden = true; }
      showList();
      showOnly(!strange.length);
      if (strange.length) { notice(); return; }
      form.show(area);
      (function ready() {
        var wanted = Swardbook.jobOut.needed(now, targets);
        if (!wanted.length) { settle(); work(job()); return; }
        Promise.all(wanted.map(Swardbook.load)).then(function () { if (mine === turn) { ready(); } }, function () {
          if (mine !== turn) { return; }
          notes = ['The data of this job could not be read, so what you see below is another job. Try again.'];
          notice();
        });
      })();
    }

    function inspected(now) { return Swardbook.jobOut.inspected(now, targets); }

    /* A job whose day nobody has set yet gets the next good one, kept where the job is. */
    function settle() {
      if (!form.settle()) { return; }
      if (desk.id !== null) { desk.keep(); address(); }
      showList();
    }

    /* A job worked out, and shown nowhere yet. */
    function worked(now) { return Swardbook.jobOut.worked(now, targets); }

    function work(now) {
      shownJob = now;
      last = worked(now);
      show(last.out, last.plan, now);
      showInspection(now);
      notice();
      /* The place that the address named is there only now: a job of another grass or place had to be loaded first. */
      var place = parts.place(arriving);
      arriving = '';
      if (place) { parts.go(place); }
    }

    function show(out, plan, now) {
      var window_ = out.window, titles = {};
      plan.kept.forEach(function (step) { titles[step.id] = step.title; });
      Swardbook.say(part('what'), book.plans[now.plan].name + ': ' + book.grasses[now.grass].name + ', ' + book.places[now.place].name + ', ' + W.day(now.on));
      S.words(part('area'), [W.area(now.area)]);
      S.list(part('choose'), book.plans[now.plan].choose, S.plain);
      Swardbook.hide(part('choose-box'), !book.plans[now.plan].choose.length);
      ['first', 'first-buy'].forEach(function (name) { S.list(part(name), out.first, Swardbook.words); });
      part('answer').classList.toggle('sb-job__answer--outside', !window_.inside);
      Swardbook.say(part('headline'), W.headline(window_));
      S.words(part('window-why'), window_.why);
      S.anew(part('window-exactly'), window_.exactly, function () { L.exactly(part('window-exactly'), window_.exactly); });
      Swardbook.tell('job-shown', { grass: now.grass, place: now.place, site: now.site, on: now.on, kind: window_.kind });
      Swardbook.say(part('edges'), W.edges(window_));
      Swardbook.say(part('frost'), L.said('frost', { chance: W.percent(window_.frost_chance_four_weeks) }));
      S.list(part('settling'), out.first_possible, function (row, each) { row.textContent = W.settles(each, titles[each.step]); });
      S.list(part('then'), window_.what_then, S.plain);
      Swardbook.hide(part('then-box'), !window_.what_then.length);
      if (!window_.inside || out.first.length) { part('then-box').open = true; }
      S.show(root, out, plan, now);
      S.next(part('next'), out, now);
      S.say(root, 'moves', S.moves(out, plan, now));
      S.late(part('late'), out, now);
      S.anew(part('left-out'), [out.left_out, now.without], function () { S.list(part('left-out'), out.left_out, leftOut); });
      Swardbook.hide(part('left-out-box'), !out.left_out.length);
      S.anew(part('shopping'), [now.plan, out.shopping], function () { L.shopping(root, out, plan); });
      S.anew(part('gear'), [out.gear, out.spoil_m3, out.gear.map(function (each) { return L.overdue(each, plan, now); })], function () { L.gear(root, out, plan, now); });
      S.anew(part('day-sheet'), [out.on, out.steps.map(function (step) { return [step.date, step.id, step.minutes, step.counted, step.title]; }), now.start, sheetDay, out.people, out.area_m2, now.plan, now.grass, last.measured], function () { L.daySheet(root, out, plan, now, sheetDay); });
      S.anew(part('water'), [out.on, L.waterings(out)], function () { L.water(root, out); });
      S.anew(part('rain'), [L.waterings(out), now.rain, allRain, Swardbook.dates.today(), Swardbook.readerUnits.us()], function () { Swardbook.jobRain.show(root, out, now.rain, allRain); });
      S.anew(part('price'), [out.cost, W.leftOpen(out)], function () { L.price(root, out); });
      parts.offer('price', Boolean(out.cost || now.money));
      money();
      var sheet = book.plans[now.plan].aftercare;
      Swardbook.hide(part('handover-box'), !sheet);
      if (sheet) {
        Swardbook.say(part('handover'), sheet.name);
        part('handover').href = root.dataset.aftercare + sheet.id + '.html#v=1&on=' + Swardbook.jobLists.finished(out) + '&grass=' + now.grass;
        part('maker').href = root.dataset.maker + '#' + Swardbook.jobLists.clientLink(out, now, sheet.id, last.measured);
      }
    }

    function showInspection(now) {
      var device = V.onDevice(), using = inspected(now), same = device && JSON.stringify(device.answers) === JSON.stringify(now.visit);
      Swardbook.hide(part('inspection-box'), !root.dataset.inspection);
      Swardbook.say(part('inspection-said'), using ? V.sum(last.seen) : device ? 'An inspection is kept on this device, with ' + W.count(Object.keys(device.answers).length, 'answer') + '.'
        : 'No inspection is kept on this device. What the inspection sheet finds can change the steps below.');
      if (using) { V.show(part('inspection-found'), last.seen, last.plan); } else { Swardbook.hide(part('inspection-found'), true); }
      var use = root.querySelector('[data-act=inspection-use]');
      Swardbook.hide(use, !device || same);
      Swardbook.say(use, (using ? 'Use the answers as they are now' : 'Use the inspection') + (device && (device.lawn || device.date) ? ': ' + [device.lawn, device.date].filter(Boolean).join(', ') : ''));
      Swardbook.hide(root.querySelector('[data-act=inspection-drop]'), !using);
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

    /* The address names the job and the part, for whoever reloads or keeps the page. how: 'pushState' for a step that Back undoes. */
    function address(how, hash) {
      var state = window.history.state, wanted = hash === undefined ? K.fragment(job(), parts.now) : hash;
      if (!how && state && state.page === token && state.job === desk.id && window.location.hash === wanted) { return; }
      try {
        window.history[how || 'replaceState']({ job: desk.id, page: token }, '', wanted);
      } catch (error) {
        /* A browser may refuse this to a page from a folder; the job is kept all the same. */
      }
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

    /* fresh: whether its day is still to be found. */
    function choose(id, fresh) {
      var lawn = null;
      sheetDay = null;
      desk.open(id);
      lawn = Swardbook.lawns.byCode(job().name);
      Swardbook.lawns.choose(lawn ? lawn.id : '');
      desk.dayOpen = Boolean(fresh);
      told([]);
      address();
      update(true);
    }

    /* The job sheet is written when it is printed. */
    function paper() {
      Swardbook.jobPrint.sheet(part('sheet'), last.out, last.plan, part('what').textContent, W.area(job().area), W.headline(last.out.window), last.seen ? last.seen.stops : []);
      part('sheet').hidden = false;
    }

    var tools = { root: root, part: part, desk: desk, last: function () { return last; }, changed: changed, paper: paper, choose: choose, drop: function () {
      var removed = desk.drop();
      told([]);
      address();
      update(true);
      return removed;
    } };

    /* What it takes to move a job is fetched when it is asked for. */
    function move() {
      Promise.all(root.dataset.moving.split(' ').map(Swardbook.load)).then(function () {
        if (parts.now !== 'all') { parts.show('when'); address(); }
        Swardbook.jobMove.open({ root: root, part: part, desk: desk, last: tools.last, worked: worked, changed: changed, book: book });
      }, function () { told(['What it takes to move a job could not be read. Try again.']); notice(); });
    }

    /* So is what follows from the price, once that part is looked at. */
    function money() {
      if (!last || parts.now !== 'price' && parts.now !== 'all') { return; }
      Promise.all(root.dataset.money.split(' ').map(Swardbook.load)).then(function () {
        if (!desk.strange().length) { Swardbook.jobMoney.show(tools); }
      }, function () { told(['What the quote and the invoice are written with could not be read. Try again.']); notice(); });
    }

    root.addEventListener('change', function (event) {
      var target = event.target;
      if (target.dataset.choice) { form.take(target.dataset.choice); }
      else if (target.closest('[data-step]')) { stepAct(target); }
      else if (target.dataset.act === 'rain') { if (Swardbook.jobRain.take(target, job().rain)) { changed(); } }
      else if (target === part('day-sheet-days')) { sheetDay = target.value; work(job()); }
      else if (target === part('day-sheet-start') && target.value) { job().start = target.value.slice(0, 5); changed(); }
      else if (target === part('day-sheet-crew') && target.value && target.checkValidity()) { job().crew = +target.value; changed(); }
      else if (target === part('name')) { job().name = target.value.trim().slice(0, Swardbook.contract.kept.longest.job); changed(); }
      else if (target === part('kept')) { if (target.value) { choose(target.value); } }
    });
    root.addEventListener('input', function (event) { if (event.target === choice('area')) { form.take('area'); } });
    root.addEventListener('click', function (event) {
      var button = event.target.closest('button[data-act]');
      if (button && button.closest('[data-step]')) { stepAct(button); }
      else if (button && button.dataset.act === 'move') { move(); }
      else if (button && button.dataset.act === 'rain-all') { allRain = true; changed(); }
      else if (button && button.dataset.act === 'inspection-use') { job().visit = V.onDevice().answers; changed(); part('inspection-said').focus(); }
      else if (button && button.dataset.act === 'inspection-drop') { job().visit = {}; changed(); part('inspection-said').focus(); }
    });
    root.addEventListener('submit', function (event) { event.preventDefault(); });

    function fromAddress() {
      var found = K.particulars(window.location.hash);
      if (found === null) { told(['This link is damaged, so it shows no job of its own.']); return; }
      if (!Object.keys(found).length) { return; }
      var asked = Object.assign(desk.usual(), { name: '' }, found.area ? { typed: '' } : {}, found);
      if (found.plan && !found.grass && book.plans[found.plan] && book.grasses[asked.grass].plans.indexOf(found.plan) < 0) { asked.grass = ''; }
      var fixed = K.known(asked, usual), same = desk.rows.all().filter(function (each) { return K.fragment(each.row) === K.fragment(fixed.job); })[0];
      if (same) { desk.open(same.id); } else { desk.draft(fixed.job); desk.dayOpen = !found.on; }
      told(fixed.told);
    }

    form = new Swardbook.jobForm.Form(root, { desk: desk, usual: usual, free: free, changed: changed, said: function (sentences) { told(sentences); notice(); } });
    parts = new Swardbook.JobParts(root, function () {
      if (last && !desk.strange().length) { S.unfold(root, last.out, job()); money(); }
      address('pushState');
    });
    var shownBefore = desk.begin();
    told([]);
    if (!shownBefore) { fromAddress(); }
    desk.listChanged = showList;
    if (root.dataset.inspection) { Swardbook.lawns.follow(function () { if (shownJob === job() && !desk.strange().length) { showInspection(job()); } }); }
    document.addEventListener('swardbook:lawn-chosen', function () {
      if (!desk.ofLawn()) { return; }
      told([]);
      address();
      update(true);
    });
    /* Back and forth go between parts, whatever was changed meanwhile; another link is another job. */
    window.addEventListener('hashchange', function () {
      var state = window.history.state, hash = window.location.hash, place = parts.place(hash);
      if (state && (state.page === token || (state.job && state.job === desk.id))) { parts.show(parts.asked(hash) || parts.first); address(); return; }
      if (place) { parts.go(place); }
      if (hash.indexOf('=') < 0) { address(); return; }
      told([]);
      fromAddress();
      update(true);
      parts.show(parts.asked(hash));
    });
    part('plain').hidden = true;
    ['form', 'keep-box', 'move-ways'].forEach(function (name) { part(name).hidden = false; });
    if (Swardbook.jobFiles) { Swardbook.jobFiles(tools); }
    Swardbook.jobTick.start({ root: root, desk: desk, last: tools.last, worked: worked, changed: changed });
    parts.show(parts.asked(window.location.hash));
    address('replaceState', window.location.href);
    update(true);
  }

  Swardbook.component('job-planner', start);
})();
