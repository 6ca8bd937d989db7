/* Which job stands on the page, and the list that it is of. A job that a link or nobody named is no row of the list until it is changed;
   one that another tab took off the list still stands here, and is neither lost nor put back unasked. */
(function () {
  'use strict';
  var NAMES = ['plan', 'grass', 'place', 'site'];

  /* usual: the job that a page begins with. show(): writes the page anew; changed(): keeps the job and does that. root: of the planner. */
  function Desk(root, usual, show, changed) {
    var K = Swardbook.jobsKept, rows = Swardbook.kept('jobs'), desk = this, before = null, lost = false, keeping = false;
    var notice = Swardbook.keptNotice(root, 'jobs', function () { return { name: 'jobs.json', kind: 'application/json', text: K.write(desk.all()) }; });

    function fresh() { return Swardbook.jobForm.ofLawn(Swardbook.shape.copy(usual), usual); }
    function listed() { return desk.id !== null && !lost; }

    this.now = null; /* The job, as the page may change it. */
    this.id = null; /* Of its row; null for one that is not kept yet. */
    this.rows = rows;
    this.usual = fresh;
    this.dayOpen = false; /* Whether its day is still to be found, for nobody has set one. */

    /* Why this book cannot work the kept job out: sentences; none where it can. Such a job is left as it is. */
    this.strange = function () {
      if (desk.id === null) { return []; }
      var found = K.known(desk.now, usual), told = found.told.slice();
      if (!told.length && NAMES.some(function (name) { return found.job[name] !== desk.now[name]; })) { told.push('This book has no site “' + desk.now.site + '” at that place.'); }
      return told.length ? told.concat(['This job is kept as it is. Open it in the book that it was made with, or save it as a file below.']) : [];
    };

    function read() {
      before = K.full(rows.get(desk.id), usual.start);
      desk.now = K.withStepsNow(before); /* Kept so with the next change. */
    }

    this.open = function (id) {
      desk.id = id;
      desk.dayOpen = false;
      lost = false;
      notice.say('');
      read();
      Swardbook.preferences.set('job', id);
    };
    this.draft = function (job) {
      desk.id = null;
      desk.dayOpen = false;
      lost = false;
      notice.say('');
      desk.now = job;
    };
    this.first = function () {
      var all = rows.all();
      if (all.length) { desk.open(all[0].id); return; }
      desk.draft(fresh());
      desk.dayOpen = true;
    };
    /* Opens the chosen lawn's own job: the one chosen last, if it is of this lawn, else its latest, else a new one. False where that stands
       already, or no lawn is chosen. */
    this.ofLawn = function () {
      var lawn = Swardbook.lawns.chosen(), last = Swardbook.preferences.get('job');
      if (!lawn || desk.now && desk.now.name === lawn.code) { return false; }
      var mine = Swardbook.lawns.jobs(lawn);
      var own = mine.filter(function (each) { return each.id === last; })[0] || mine[0];
      if (own) { desk.open(own.id); return true; }
      desk.draft(fresh());
      desk.dayOpen = true;
      return true;
    };
    /* The job that this page showed before a reload, else that of the chosen lawn, else the one chosen last, else the first. True where it is
       that of before. */
    this.begin = function () {
      var state = window.history.state, ids = rows.all().map(function (each) { return each.id; });
      var before = state && ids.indexOf(state.job) >= 0 ? state.job : null, last = Swardbook.preferences.get('job');
      if (before !== null) { desk.open(before); } else if (!desk.ofLawn()) {
        if (ids.indexOf(last) >= 0) { desk.open(last); } else { desk.first(); }
      }
      return before !== null;
    };
    /* [[id, row]] to choose from; the id of one that is no row is ''. */
    this.list = function () {
      var kept = rows.all().map(function (each) { return [each.id, each.row]; });
      return listed() ? kept : kept.concat([['', desk.now]]);
    };
    this.chosen = function () { return listed() ? desk.id : ''; };
    this.all = function () { return desk.list().map(function (each) { return each[1]; }); };
    this.one = function () { return listed() ? rows.get(desk.id) : desk.now; };
    this.full = function () { return 'The list holds ' + rows.most + ' jobs, and no more fit. Take one off first.'; };

    /* Only what was changed here goes into the row, whatever another tab did to it meanwhile. */
    this.keep = function () {
      if (lost) { return; }
      keeping = true;
      if (desk.id !== null) { if (!rows.change(desk.id, before, desk.now)) { gone(); } }
      else if (rows.room()) {
        var dayOpen = desk.dayOpen;
        desk.open(rows.add(desk.now));
        desk.dayOpen = dayOpen;
      }
      else { notice.say(desk.full() + ' This one stays on this page until it is closed.', [['Save it as a file', function () { Swardbook.download('job.json', 'application/json', K.write([desk.now])); }]]); }
      keeping = false;
    };

    /* Takes the job off the list. Returns what `rows.restore` wants, or null where it was on none. */
    this.drop = function () {
      keeping = true;
      var removed = listed() ? rows.remove(desk.id) : null;
      desk.first();
      keeping = false;
      return removed;
    };

    function gone() {
      lost = true;
      notice.say('This job was taken off the list in another tab. It is still on this page, but changes to it are not kept.', [
        ['Keep it as a new job', function () { lost = false; desk.id = null; changed(); }],
        ['Discard it', function () { desk.first(); show(); }]
      ]);
    }

    /* The job as it is kept now, after a change here or in another tab. */
    function sync() {
      if (desk.id === null) { desk.listChanged(); return; }
      var there = rows.get(desk.id) !== null, old = Swardbook.shape.copy(desk.now);
      if (!there && !lost && !keeping) { gone(); }
      if (there && lost) {
        lost = false;
        notice.say('');
        rows.change(desk.id, before, desk.now);
        return;
      }
      if (there) { read(); }
      if (!keeping && (!there || !Swardbook.shape.same(old, desk.now))) { show(); } else { desk.listChanged(); }
    }

    this.listChanged = function () { /* The page writes its list of jobs anew. */ };
    rows.follow(sync);
  }

  var has = Swardbook.own;

  /* A job in the list of all. */
  function nameOf(job, book) {
    var plan = has(book.plans, job.plan), grass = has(book.grasses, job.grass);
    return (job.name ? job.name + ': ' : '') + (grass ? book.grasses[job.grass].name : job.grass) + ', ' + (plan ? book.plans[job.plan].name : job.plan) +
      ', ' + Swardbook.jobWords.day(job.on) + (plan && grass ? '' : ' (not in this book)');
  }

  /* all: [[value, words]]. A list that stays the same is left alone, for somebody may have it open. */
  function options(select, all, chosen) {
    var same = JSON.stringify(all);
    if (select.sbOptions === same && select.value === chosen) { return; }
    select.sbOptions = same;
    Swardbook.jobSteps.clear(select);
    all.forEach(function (each) {
      var option = select.appendChild(Swardbook.element('option', '', each[1]));
      option.value = each[0];
      option.selected = each[0] === chosen;
    });
  }

  Swardbook.jobDesk = { Desk: Desk, nameOf: nameOf, options: options };
})();
