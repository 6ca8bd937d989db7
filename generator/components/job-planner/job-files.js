/* What a reader takes away of a job: a file to carry on with elsewhere, and a link; and the list of jobs kept here. */
(function () {
  'use strict';

  /* What the ids of a job's events begin with: set when its first calendar is made, with the day it then had, and kept, so that a
     calendar made after the job has moved moves its events. As job_key in generator/outputs/job_calendar.py. */
  function calendarKey(job) {
    var key = [job.plan, job.grass, job.place, job.site, job.on.replace(/-/g, '')].join('-') + (job.name ? '-' + encodeURIComponent(job.name) : '');
    job.key = job.key || key;
    return job.key;
  }

  Swardbook.jobFiles = function (tools) {
    var K = Swardbook.jobsKept, told = tools.part('told');
    function on(act, run) {
      var button = tools.root.querySelector('[data-act="' + act + '"]');
      if (button) { button.addEventListener('click', run); }
    }
    on('new', function () { tools.add([tools.usual()]); tools.choose(tools.jobs().length - 1); told.textContent = 'A new job.'; });
    on('forget', function () { tools.drop(); tools.choose(0); told.textContent = 'That job is off the list.'; });
    on('export', function () { Swardbook.download('job-' + tools.job().plan + '-' + tools.job().on + '.json', 'application/json', K.write([tools.job()], 0)); });
    on('export-all', function () { Swardbook.download('jobs.json', 'application/json', K.write(tools.jobs(), 0)); });
    ['sheet', 'shopping', 'crew'].forEach(function (name) { on('print-' + name, function () { Swardbook.jobPrint.print(name); }); });
    on('calendar', function () {
      var now = tools.job(), fromIso = Swardbook.dates.fromIso;
      var key = calendarKey(now);
      var entries = tools.last().out.steps.map(function (step) {
        return {
          id: key + '-' + step.id, title: (now.name ? now.name + ': ' : '') + step.title, text: step.say + (step.wait_for ? '\nWait for: ' + step.wait_for : ''),
          first: fromIso(step.date), last: fromIso(step.until || step.date)
        };
      });
      tools.keep();
      var text = Swardbook.calendarFile(tools.part('what').textContent, entries, Swardbook.jobs.book().domain, new Date());
      Swardbook.download('job-' + now.plan + '-' + now.on + '.ics', 'text/calendar', text);
    });
    on('link', function () {
      var area = tools.part('text');
      area.value = (tools.root.dataset.address || window.location.href.split('#')[0]) + K.fragment(tools.job());
      area.hidden = false;
      area.focus();
      area.select();
      told.textContent = tools.root.dataset.address ? 'A link that opens this job without its ticks. Copy it from here.' : 'This book has no public address, so this link works only where this copy stands.';
    });
    tools.part('take').addEventListener('change', function (event) {
      var file = event.target.files[0];
      if (!file) { return; }
      file.text().then(function (text) {
        var found = K.read(text, tools.root.dataset.start), first = tools.jobs().length;
        event.target.value = '';
        if (!found.jobs.length) { told.textContent = 'No job could be read from that file.'; return; }
        tools.add(found.jobs);
        tools.choose(first);
        told.textContent = Swardbook.jobWords.count(found.jobs.length, 'job') + ' taken from the file.' + (found.damaged ? ' Some of it could not be read.' : '');
      }, function () { told.textContent = 'That file could not be read.'; });
    });
  };
})();
