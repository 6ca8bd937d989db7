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

  /* plan: as job_scripts.py writes it. adjusted: {without {step: why}, tasksWithout {task: why}, softer {task: [levels, why]},
     added [steps], chosen [ids]}, all of it optional. Gives {kept, leftOut}: steps by day, the plan's order within a day; and {id, task, title, why}. */
  function stepsFor(plan, adjusted) {
    var gone = {}, leftOut = [], kept = [], chosen = (adjusted.chosen || []).slice();
    function onNeed(task) { return plan.steps.find(function (step) { return step.only_where && step.task && step.task === task; }); }
    var added = (adjusted.added || []).filter(function (step) { return !onNeed(step.task); });
    (adjusted.added || []).forEach(function (step) { if (onNeed(step.task)) { chosen.push(onNeed(step.task).id); } });
    plan.steps.concat(added).forEach(function (step) {
      var grass = step.level === null && step.task && has(plan.takes, step.task) ? plan.takes[step.task] : step;
      var operation = softened({ level: grass.level || null, how: grass.how || null }, step.task && has(adjusted.softer, step.task) ? adjusted.softer[step.task] : null);
      var why = reason(step, operation, adjusted, plan.grass);
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
