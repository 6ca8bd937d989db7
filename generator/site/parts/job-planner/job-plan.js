/* Which steps of a plan one lawn gets, and why not the others. Twin: plan steps. */
(function () {
  'use strict';
  var K = Swardbook.contract['job-planner'], LEVELS = K.levels, has = Swardbook.own;

  /* {level, how} so many levels gentler; where nothing is left of it, the reason takes the place of how it is done. */
  function softened(operation, softer) {
    if (!softer || !operation.level || operation.level === 'none') { return operation; }
    var level = LEVELS[Math.max(0, LEVELS.indexOf(operation.level) - softer[0])];
    return { level: level, how: level === 'none' ? softer[1] : operation.how + ' ' + softer[1] };
  }

  function reason(step, operation, adjusted, grass) {
    if (step.never) { return step.never; }
    /* The step is for gentler treatment: how this grass takes its own would be no reason. */
    if (operation.level && operation.level !== 'none' && step.only_levels.length && step.only_levels.every(function (level) {
      return LEVELS.indexOf(operation.level) > LEVELS.indexOf(level);
    })) { return Swardbook.filled(K.only_levels, { levels: step.only_levels.join(' or '), grass: grass, level: operation.level }); }
    if (operation.level === 'none' || (operation.level && step.only_levels.length && step.only_levels.indexOf(operation.level) < 0)) { return operation.how; }
    if (has(adjusted.without, step.id)) { return adjusted.without[step.id]; }
    return step.task && has(adjusted.tasksWithout, step.task) ? adjusted.tasksWithout[step.task] : null;
  }

  /* What a step waits for once the steps left out are skipped. */
  function after(step, gone, seen) {
    var waits = [];
    step.after.forEach(function (id) {
      if (seen.indexOf(id) >= 0) { return; }
      (has(gone, id) ? after(gone[id], gone, seen.concat(id)) : [id]).forEach(function (each) { if (waits.indexOf(each) < 0) { waits.push(each); } });
    });
    return waits;
  }

  /* What an inspection adds goes among the plan's steps: said in the plan's own step where that does the like, else before what it has to
     come before. A step that is left out keeps its place. */
  function putIn(steps, step, isKept) {
    var at = steps.findIndex(function (each) {
      var like = step.part_of.indexOf(each.id) >= 0 || (step.task !== null && each.task === step.task && each.day === step.day);
      return like && !each.only_where && !each.added && each.who === step.who && isKept(each);
    });
    if (at >= 0) {
      steps[at] = Object.assign({}, steps[at], { say: steps[at].say + ' ' + step.say });
      return;
    }
    at = steps.findIndex(function (each) { return each.day === step.day && step.before.indexOf(each.task) >= 0; });
    if (at < 0) { steps.push(step); return; }
    var next = steps[at];
    steps.splice(at, 1, Object.assign({}, step, { after: next.after, gaps: next.gaps }), Object.assign({}, next, { after: next.after.concat(step.id) }));
  }

  /* plan: as job_scripts.py writes it. adjusted: {without {step: why}, tasksWithout {task: why}, softer {task: [levels, why]},
     added [steps], chosen [ids]}, all of it optional. Gives {kept, leftOut}: steps by day, the plan's order within a day; and {id, task, title, why}. */
  function stepsFor(plan, adjusted) {
    var gone = {}, leftOut = [], kept = [], chosen = (adjusted.chosen || []).slice();
    function onNeed(task) { return plan.steps.find(function (step) { return step.only_where && step.task && step.task === task; }); }
    var added = (adjusted.added || []).filter(function (step) { return !onNeed(step.task); });
    (adjusted.added || []).forEach(function (step) { if (onNeed(step.task)) { chosen.push(onNeed(step.task).id); } });
    function taken(step) {
      var grass = step.level === null && step.task && has(plan.takes, step.task) ? plan.takes[step.task] : step;
      return softened({ level: grass.level || null, how: grass.how || null }, step.task && has(adjusted.softer, step.task) ? adjusted.softer[step.task] : null);
    }
    function why_not(step) { return reason(step, taken(step), adjusted, plan.grass); }
    var steps = plan.steps.slice();
    added.forEach(function (step) { putIn(steps, step, function (each) { return !why_not(each); }); });
    steps.forEach(function (step) {
      var operation = taken(step), why = why_not(step);
      if (why) {
        gone[step.id] = step;
        leftOut.push({ id: step.id, task: step.task, title: step.title, why: why });
      } else { kept.push(Object.assign({}, step, operation, { counted: !step.only_where || chosen.indexOf(step.id) >= 0 })); }
    });
    kept.forEach(function (step) { step.after = after(step, gone, []); });
    /* A browser's sort may be unstable where it is old, so the place in the plan decides within a day. */
    var place = {};
    kept.forEach(function (step, number) { place[step.id] = number; });
    kept.sort(function (one, other) { return one.day - other.day || place[one.id] - place[other.id]; });
    return { kept: kept, leftOut: leftOut };
  }

  /* The steps chosen, with or without this one: one that is done counts, though it is one for where it is needed. */
  function chosenWith(plan, chosen, id, yes) {
    var on_need = plan.kept.some(function (step) { return step.id === id && step.only_where; });
    return chosen.filter(function (each) { return each !== id; }).concat(yes && on_need ? [id] : []);
  }

  Swardbook.jobPlan = { stepsFor: stepsFor, chosenWith: chosenWith };
})();
