/* What a tick does. It says what happened, and moves nothing: a step is done on its planned day unless the reader says otherwise, and
   where another day would move what waits for it, the page asks first, with all that would move. */
(function () {
  'use strict';

  /* The day that a tick stands for: the one it was planned for, or today where that is still to come. */
  function dayOf(step) {
    var today = Swardbook.dates.iso(Swardbook.dates.today());
    return step.date < today ? step.date : today;
  }

  /* Every other step that falls on another day: [{id, title, from, to}], in order. */
  function moved(before, after, id) {
    var dates = {};
    before.steps.forEach(function (step) { dates[step.id] = step.date; });
    return after.steps.filter(function (step) { return step.id !== id && dates[step.id] && dates[step.id] !== step.date; })
      .map(function (step) { return { id: step.id, title: step.title, from: dates[step.id], to: step.date }; });
  }

  /* tools: those of the planner: {root, desk, last, worked, changed}. */
  function start(tools) {
    var asked = null, W = Swardbook.jobWords;
    function item(id) { return tools.root.querySelector('[data-step="' + id + '"]'); }
    function planned(id) { return tools.last().out.steps.find(function (step) { return step.id === id; }); }

    function done(id, day) {
      var now = tools.desk.now;
      now.done[id] = day;
      now.chosen = Swardbook.jobPlan.chosenWith(tools.last().plan, now.chosen, id, true);
      tools.changed();
    }

    function ask(id, day, moves) {
      var box = item(id).querySelector('[data-part=tick-ask]');
      asked = { id: id, day: day };
      box.hidden = false;
      var said = box.querySelector('[data-part=tick-said]');
      said.textContent = Swardbook.filled(Swardbook.contract['job-planner'].sentences.late_tick, { day: W.day(day), count: W.count(moves.length, 'step') });
      Swardbook.jobSteps.list(box.querySelector('[data-part=tick-moves]'), moves, function (row, each) {
        row.textContent = each.title + ': ' + W.day(each.from).slice(0, -5) + ' → ' + W.day(each.to).slice(0, -5);
      });
      said.focus();
    }

    /* Nothing is asked where nothing else moves. */
    function tell(id, day) {
      var now = tools.desk.now, then = Object.assign({}, now, { done: Object.assign({}, now.done) });
      then.done[id] = day;
      var moves = moved(tools.last().out, tools.worked(then).out, id);
      if (moves.length) { ask(id, day, moves); } else { done(id, day); }
    }

    function answered(yes) {
      var box = item(asked.id).querySelector('[data-part=tick-ask]'), field = item(asked.id).querySelector('[data-act=day]');
      box.hidden = true;
      if (yes) { done(asked.id, asked.day); } else { field.value = planned(asked.id).date; }
      asked = null;
      field.focus();
    }

    tools.root.addEventListener('change', function (event) {
      var step = event.target.closest('[data-step]'), id = step && step.dataset.step, now = tools.desk.now;
      if (!step) { return; }
      if (event.target.dataset.act === 'done') {
        if (event.target.checked) { done(id, dayOf(planned(id))); } else { delete now.done[id]; tools.changed(); }
      } else if (event.target.dataset.act === 'day' && now.done[id] && Swardbook.kept.isDay(event.target.value)) { tell(id, event.target.value); }
    });
    tools.root.addEventListener('click', function (event) {
      var button = event.target.closest('button[data-act^=tick-]');
      if (button && asked) { answered(button.dataset.act === 'tick-move'); }
    });
  }

  function figure(given) { return given ? given.value + ' ' + given.unit : ''; }

  /* What was put on at a step: {product, amount, rate, nitrogen_percent}, as far as the plan knows. */
  function putOn(step, planned) {
    var at = -1, found = planned.quantities.filter(function (each, number) { if (at < 0 && each.buy) { at = number; } return number === at; })[0], given = step.quantities[at];
    if (!found || !given) { return {}; }
    return {
      product: found.buy.name, amount: figure(given.results[found.buy.result]), rate: figure(given.inputs.rate || given.results.rate), nitrogen_percent: figure(given.inputs.nitrogen_percent)
    };
  }

  /* What was said of that day, where somebody was asked. */
  function weather(day) {
    var said = (Swardbook.kept('holds').get(day) || {}).all || {}, rain = [];
    if (said.rain_fallen) { rain.push(said.rain_fallen + ' fallen'); }
    if (said.rain_to_come) { rain.push(said.rain_to_come + ' to come'); }
    return { wind_speed: said.wind, rain: rain.join(', ') };
  }

  /* The entry of the work record that a done step makes, by column; null for one that is not done, or that no record asks for. */
  function columns(step, planned, job) {
    var work = Swardbook.jobs.book().record, day = job.done[step.id];
    if (!day || !Swardbook.own(work, step.task)) { return null; }
    return Object.assign({ work: work[step.task], date: day, lawn: job.name, grass: job.grass, area: job.typed || +job.area.toFixed(4) + ' m2' }, putOn(step, planned), weather(day));
  }

  /* The same as the part of an address behind its #; '' for none. What does not fit into an address is left to the reader. */
  function entry(step, planned, job) {
    var of = columns(step, planned, job);
    if (!of) { return ''; }
    return Object.keys(of).reduce(function (sum, name) {
      var more = of[name] ? sum + '&' + name + '=' + encodeURIComponent(of[name]) : sum;
      return more.length <= Swardbook.fragment.longest ? more : sum;
    }, Swardbook.fragment.begin);
  }

  Swardbook.jobTick = { start: start, moved: moved, entry: entry, columns: columns };
})();
