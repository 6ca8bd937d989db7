/* The day of every lawn that is kept on this device: its steps worked out by the planner's own scripts, which come only when there are jobs,
   and asked of the day by the rules of hold or go. today-list.js writes the lines. */
(function () {
  'use strict';

  function start(root) {
    var parts = Swardbook.parts(root), lawns = Swardbook.lawns, form = null, asked = '', turn = 0, days = [], names = JSON.parse(root.dataset.tasks);
    var targets = { jobs: root.dataset.jobs, calculators: root.dataset.calculators, inspection: root.dataset.inspection.split(' ').filter(Boolean) };

    function now() { return Swardbook.dates.iso(Swardbook.dates.today()); }

    /* One after the other, because they lean on each other. */
    function inOrder(addresses) {
      return addresses.reduce(function (before, address) { return before.then(function () { return Swardbook.load(address); }); }, Promise.resolve());
    }

    /* Jobs of lawns that are kept: [{id, row, lawn}]. */
    function jobs() {
      return Swardbook.kept('jobs').all().map(function (each) { return { id: each.id, row: each.row, lawn: each.row.name ? lawns.byCode(each.row.name) : null }; })
        .filter(function (each) { return each.lawn; });
    }

    /* Promises {id, lawn, job, out}; null for a job that this book cannot work out. */
    function workedOut(each) {
      var job = Swardbook.jobsKept.withStepsNow(Swardbook.jobsKept.full(each.row, root.dataset.start));
      if (Swardbook.jobsKept.known(job, job).told.length) { return Promise.resolve(null); }
      return Swardbook.jobOut.ready(job, targets).then(function () {
        return { id: each.id, lawn: each.lawn, job: job, out: Swardbook.jobOut.worked(job, targets).out };
      });
    }

    function trouble(words) {
      parts.trouble.textContent = words;
      parts.trouble.hidden = !words;
    }

    function show(worked) {
      var strange = worked.filter(function (each) { return each === null; }).length;
      days = worked.filter(Boolean);
      trouble(strange ? strange + (strange === 1 ? ' job is' : ' jobs are') + ' of another book, and left out here.' : '');
      var lists = listed();
      weather(lists.late.concat(lists.due));
      write(lists);
    }

    function listed() { return Swardbook.todayLists(days, lawns.all(), now()); }

    /* One form for what all of today's steps hang on; what a job or a grass knows is not asked. */
    function weather(lines) {
      var tasks = [].concat.apply([], lines.map(Swardbook.todayTasks))
        .filter(function (task, at, all) { return all.indexOf(task) === at && Swardbook.holds && Swardbook.holds.of(task).length; });
      parts.weather.hidden = !tasks.length;
      if (asked === tasks.join()) { return; }
      asked = tasks.join();
      if (form) { form.remove(); }
      form = tasks.length ? Swardbook.holdOrGo.mount(parts.weather, {
        tasks: tasks, date: now(), open: false, known: { cool_season: false, surface_running: false, days_since_cut_down: 'none', depth_due: '0 mm' }, from: 'your jobs and visits', onAnswer: again
      }) : null;
    }

    function again() { if (days.length || visited()) { write(listed()); } }

    function write(lists) {
      Swardbook.todayWrite(parts, lists, { jobPage: root.dataset.jobPage, programmePage: root.dataset.programmePage, tasks: names, today: now() });
    }

    /* Whether a lawn has a year of visits: without one, and without jobs, nothing more is loaded. */
    function visited() { return lawns.all().some(function (lawn) { return lawn.programme; }); }

    function update() {
      var all = lawns.all(), mine = turn += 1, found = jobs();
      root.hidden = !all.length;
      if (!all.length) { return; }
      parts.title.textContent = 'Today, ' + Swardbook.dates.words(Swardbook.dates.today());
      Swardbook.todayWithout(parts.without, all, found, root.dataset);
      if (!found.length && !visited()) { show([]); return; }
      inOrder((found.length ? root.dataset.scripts.split(' ') : []).concat(root.dataset.holds.split(' ')).filter(Boolean)).then(function () {
        return Promise.all(found.map(workedOut));
      }).then(function (worked) { if (mine === turn) { show(worked); } }, function () {
        if (mine === turn) { trouble('The data of your jobs could not be read. Open the page again.'); }
      });
    }

    lawns.follow(update);
    Swardbook.kept('jobs').follow(update);
    document.addEventListener('swardbook:units', again);
    document.addEventListener('visibilitychange', function () { if (!document.hidden) { update(); } }); /* A phone that slept through midnight. */
    update();
  }

  Swardbook.component('today', start);
})();
