/* The form of a job: which lawn, which plan, which day. What a new job begins with, and the day that it gets while nobody has set one. */
(function () {
  'use strict';

  function choice(root, name) { return root.querySelector('[data-choice="' + name + '"]'); }
  function today() { return Swardbook.dates.today(); }

  /* The job that a page begins with: the practice's own grass and place. Its day is found once the plan and the place are there. */
  function usual(root) {
    function value(name) { return choice(root, name).value; }
    return {
      plan: value('plan'), grass: value('grass'), place: value('place'), site: value('site'), on: Swardbook.dates.iso(today()),
      area: Swardbook.quantity.read(value('area'), 'm2'), name: '', start: root.dataset.start, done: {}, put: {}, without: [], chosen: [], rain: {},
      typed: value('area'), visit: {}, key: ''
    };
  }

  /* The same for the lawn that the reader has chosen, with what its inspection found; as it is where none is chosen. */
  function ofLawn(job, otherwise) {
    var lawn = Swardbook.lawns.chosen(), area = lawn && Swardbook.lawns.area(lawn);
    if (!lawn) { return job; }
    ['grass', 'place', 'site'].forEach(function (name) { if (lawn[name]) { job[name] = lawn[name]; } });
    if (area !== null && Swardbook.kept.isArea(area)) { Object.assign(job, { area: area, typed: lawn.area }); }
    Object.assign(job, { name: lawn.code, visit: Swardbook.jobInspection.clean(Swardbook.lawns.inspection().answers) });
    return Swardbook.jobsKept.known(job, otherwise).job;
  }

  /* The next good day of a plan on a lawn; null where its data are not there yet. Twin: next day. */
  function goodDay(job) {
    var held = Swardbook.jobs.held(job.plan, job.grass, job.place, job.site);
    if (!held.plan || !held.site) { return null; }
    var lead = Math.max.apply(null, held.plan.steps.map(function (step) { return -step.day; }).concat(0));
    return Swardbook.dates.iso(Swardbook.jobDates.next(held.site.windows[held.plan.window].stretches, today() + lead));
  }

  /* tools: {desk, usual, free(field): whether it may be written into, changed(), said(sentences)}. */
  function Form(root, tools) {
    var book = Swardbook.jobs.book(), desk = tools.desk;
    function part(name) { return root.querySelector('[data-part="' + name + '"]'); }

    function trouble(sentence) {
      part('area-trouble').textContent = sentence;
      part('area-trouble').hidden = !sentence;
      Swardbook.markInvalid(choice(root, 'area'), sentence);
    }

    /* A bare number is in the unit that the reader prefers now; with it beside, it stays what it was. */
    function areaUnit() { return Swardbook.readerUnits.of('m2', 'ft2'); }

    function day() {
      if (tools.free(choice(root, 'on'))) { choice(root, 'on').value = desk.dayOpen && goodDay(desk.now) !== desk.now.on ? '' : desk.now.on; }
      part('day-why').hidden = !desk.dayOpen;
    }

    this.show = function (area) {
      var now = desk.now, field = choice(root, 'area'), sites = book.places[now.place].sites;
      choice(root, 'grass').value = now.grass;
      choice(root, 'place').value = now.place;
      Swardbook.jobDesk.options(choice(root, 'plan'), book.grasses[now.grass].plans.map(function (id) { return [id, book.plans[id].name]; }), now.plan);
      Swardbook.jobDesk.options(choice(root, 'site'), sites.map(function (id) { return [id, book.sites[id]]; }), now.site);
      part('site-note').hidden = sites.length > 1;
      day();
      if (area && tools.free(field)) { field.value = now.typed || +now.area.toFixed(4) + ' m2'; trouble(''); }
      if (tools.free(part('day-sheet-start'))) { part('day-sheet-start').value = now.start; }
      if (tools.free(part('day-sheet-crew'))) { part('day-sheet-crew').value = now.crew || part('day-sheet-crew').defaultValue; }
    };

    /* Whether the job got another day. What is begun stays where it is. */
    this.settle = function () {
      var now = desk.now, before = now.on;
      if (desk.dayOpen && !Object.keys(now.done).length && !Object.keys(now.put).length) { now.on = goodDay(now) || now.on; }
      day();
      return now.on !== before;
    };

    /* What the reader chose goes into the job. */
    this.take = function (name) {
      var now = desk.now, field = choice(root, name);
      if (name === 'area') {
        try {
          var area = Swardbook.quantity.read(field.value, areaUnit());
          if (!Swardbook.kept.isArea(area)) { trouble(Swardbook.lawns.noArea); return; }
          trouble('');
          now.area = area;
          now.typed = Swardbook.readerUnits.beside(field.value.trim(), areaUnit());
        } catch (problem) {
          trouble(Swardbook.sentenceOf(problem));
          return;
        }
      } else if (name === 'on') {
        if (!Swardbook.kept.isDay(field.value)) { return; }
        now.on = field.value;
        desk.dayOpen = false;
      } else { now[name] = field.value; }
      var fixed = Swardbook.jobsKept.known(now, tools.usual);
      desk.now = fixed.job;
      tools.changed();
      tools.said(fixed.told);
    };
  }

  Swardbook.jobForm = { usual: usual, ofLawn: ofLawn, Form: Form };
})();
