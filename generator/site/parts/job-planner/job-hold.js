/* Hold or go at a step, opened when it is asked for; what the job knows is given to it (parts/hold-or-go). */
(function () {
  'use strict';
  var CUT = 'cut-down';

  function dayOf(step) {
    var today = Swardbook.dates.iso(Swardbook.dates.today());
    return step.until && today > step.date && today <= step.until ? today : step.date;
  }

  /* The number of days, or that it was not cut down: a job knows its own steps. */
  function sinceCutDown(out, step, day) {
    var cuts = out.steps.filter(function (each) { return each.task === CUT && each.id !== step.id && each.date <= day; });
    if (!cuts.length) { return 'none'; }
    return Swardbook.dates.fromIso(day) - Swardbook.dates.fromIso(cuts[cuts.length - 1].date);
  }

  function known(out, step, day, job) {
    var grass = Swardbook.holdRules.grasses[job.grass], due = step.watering.filter(function (each) { return each.date === day; })[0];
    return {
      cool_season: grass ? Boolean(grass.known.cool_season) : null, surface_running: grass ? Boolean(grass.known.surface_running) : null,
      days_since_cut_down: sinceCutDown(out, step, day), depth_due: due ? due.depth_mm : null,
      rain_to_come: job.rain[day] === undefined ? null : job.rain[day]
    };
  }

  function part(item, name) { return Swardbook.jobSteps.part(item, name); }

  function mount(item) {
    var now = item.jobHold, day = dayOf(now.step);
    if (now.box || !Swardbook.holdOrGo) { return; }
    now.box = Swardbook.holdOrGo.mount(part(item, 'hold-live'), {
      task: now.step.task, date: day, known: known(now.out, now.step, day, now.job),
      onAnswer: function (found) {
        part(item, 'hold-said').textContent = found.words;
        part(item, 'later').hidden = found.answer !== 'hold' && found.answer !== 'care';
      }
    });
  }

  /* scripts: addresses, in order. What cannot be loaded is told where the answer would stand. */
  function open(item, scripts) {
    scripts.reduce(function (before, address) {
      return before.then(function () { return Swardbook.load(address); });
    }, Promise.resolve()).then(function () { mount(item); }, function () { part(item, 'hold-live').textContent = 'The rules could not be read. Try again.'; });
  }

  /* For each step on the page, after it was filled in. */
  function show(item, step, out, job, root) {
    var box = part(item, 'hold'), wanted = step.task !== null && Swardbook.jobs.book().holds.indexOf(step.task) >= 0 && !job.done[step.id];
    Swardbook.hide(box, !wanted);
    var old = item.jobHold;
    item.jobHold = { step: step, out: out, job: job, box: old ? old.box : null };
    if (!old) {
      box.addEventListener('toggle', function () {
        if (box.open) { open(item, root.dataset.holds.split(' ')); }
      });
    }
    if (item.jobHold.box) { item.jobHold.box.update({ date: dayOf(step), known: known(out, step, dayOf(step), job) }); }
  }

  function gone(item) { if (item.jobHold && item.jobHold.box) { item.jobHold.box.remove(); } }

  function told(item, sentence) { part(item, 'hold-told').textContent = sentence; }

  Swardbook.jobHold = { known: known, show: show, gone: gone, told: told };
})();
