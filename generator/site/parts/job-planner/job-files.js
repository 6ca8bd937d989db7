/* What a reader takes away of a job: a file to carry on with elsewhere, and a link; and the list of jobs kept here. */
(function () {
  'use strict';
  var MOST_TOLD = 20;

  /* What the ids of a job's events begin with: set when its first calendar is made, with the day it then had, and kept, so that a
     calendar made after the job has moved moves its events. Twin: calendar key. */
  function calendarKey(job) {
    var key = [job.plan, job.grass, job.place, job.site, job.on.replace(/-/g, '')].join('-') + (job.name ? '-' + encodeURIComponent(job.name) : '');
    job.key = job.key || key;
    return job.key;
  }

  /* The first of many sentences, and how many more there are. */
  function few(sentences) {
    return sentences.slice(0, MOST_TOLD).concat(sentences.length > MOST_TOLD ? ['And ' + (sentences.length - MOST_TOLD) + ' more.'] : []);
  }

  Swardbook.jobFiles = function (tools) {
    var K = Swardbook.jobsKept, told = tools.part('told'), undo = tools.root.querySelector('[data-act=undo]'), removed = null;
    function on(act, run) {
      var button = tools.root.querySelector('[data-act="' + act + '"]');
      if (button) { button.addEventListener('click', run); }
    }
    on('new', function () {
      if (!tools.desk.rows.room()) { told.textContent = tools.desk.full(); return; }
      tools.choose(tools.desk.rows.add(tools.desk.usual()), true);
      told.textContent = 'A new job.';
    });
    on('forget', function () {
      removed = tools.drop();
      undo.hidden = !removed;
      told.textContent = 'That job is off the list.';
      if (removed) { undo.focus(); }
    });
    on('undo', function () {
      var back = removed;
      removed = null;
      undo.hidden = true;
      tools.desk.rows.restore(back);
      tools.choose(back.id);
      told.textContent = 'That job is back.';
      tools.part('kept').focus();
    });
    on('export', function () { Swardbook.download('job-' + tools.desk.now.plan + '-' + tools.desk.now.on + '.json', 'application/json', K.write([tools.desk.one()])); });
    on('export-all', function () { Swardbook.download('jobs.json', 'application/json', K.write(tools.desk.all())); });
    ['sheet', 'shopping', 'day-sheet', 'part', 'all'].forEach(function (name) { on('print-' + name, function () {
        if (name === 'sheet') { tools.paper(); }
        Swardbook.jobPrint.print(name);
      }); });
    on('calendar', function () {
      var now = tools.desk.now, fromIso = Swardbook.dates.fromIso;
      var key = calendarKey(now), events = {};
      tools.last().plan.kept.forEach(function (step) { events[step.id] = step.event; });
      var entries = tools.last().out.steps.map(function (step) {
        return {
          id: key + '-' + (events[step.id] || step.id), title: (now.name ? now.name + ': ' : '') + Swardbook.told(step.title), text: Swardbook.told(step.say + (step.wait_for ? '\nWait for: ' + step.wait_for : '')),
          first: fromIso(step.date), last: fromIso(step.until || step.date)
        };
      });
      tools.desk.keep();
      var text = Swardbook.calendarFile(tools.part('what').textContent, entries, Swardbook.jobs.book().domain, new Date());
      Swardbook.download('job-' + now.plan + '-' + now.on + '.ics', 'text/calendar', text);
    });
    on('link', function () {
      var area = tools.part('text');
      area.value = (tools.root.dataset.address || window.location.href.split('#')[0]) + K.fragment(tools.desk.now);
      area.hidden = false;
      area.focus();
      area.select();
      told.textContent = tools.root.dataset.address ? 'A link that opens this job without its ticks. Copy it from here.' : 'This book has no public address, so this link works only where this copy of it is.';
    });
    /* found: what K.read gives. Jobs that there is room for are taken; of the rest it is said why not. */
    function take(found) {
      var room = tools.desk.rows.room(), taken = found.rows.slice(0, room), over = found.rows.length - taken.length, ids = [], words = [];
      tools.desk.rows.together(function () { ids = taken.map(function (row) { return tools.desk.rows.add(row); }); });
      if (ids.length) { tools.choose(ids[0]); }
      if (!found.rows.length) { words.push('No job could be read from that file.'); }
      if (taken.length) { words.push(Swardbook.jobWords.count(taken.length, 'job') + ' taken from the file.'); }
      if (over) { words.push(Swardbook.jobWords.count(over, 'job') + ' did not fit. ' + tools.desk.full()); }
      told.textContent = words.concat(few(found.faults)).join(' ');
    }

    tools.part('take').addEventListener('change', function (event) {
      var file = event.target.files[0];
      if (!file) { return; }
      file.text().then(function (text) {
        event.target.value = '';
        take(K.read(text));
      }, function () { told.textContent = 'That file could not be read.'; });
    });
  };
  Swardbook.jobFiles.key = calendarKey;
})();
