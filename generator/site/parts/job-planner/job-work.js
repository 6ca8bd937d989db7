/* A job worked out from the book's data: the same plain values as `swardbook plan --json`. Twin: job work. */
(function () {
  'use strict';
  var DAYS = Swardbook.contract.year.days, K = Swardbook.contract['job-planner'];

  function tidy(value) { return Swardbook.calculator.tidy(value); }
  function iso(day) { return day === null ? null : Swardbook.dates.iso(day); }
  function around(value) { return ((value % DAYS) + DAYS) % DAYS; }

  /* A calculator's results for values in SI units. Results that have no answer are left out. */
  function results(calculator, values) { return Swardbook.calculator.answers(Swardbook.calculators[calculator], values); }

  function amount(si, spelling) { return { value: Swardbook.calculator.inUnit(si, spelling), unit: spelling }; }

  function specOf(calculator, name) {
    return Swardbook.calculators[calculator].results.find(function (each) { return each.name === name; });
  }

  /* --- where the day stands to the window --- */
  function verdict(plan, site, on) {
    var day = Swardbook.jobDates.dayOfYear(on);
    var found = site.windows[plan.window];
    var frost = Swardbook.jobDates.at(site.frost_ahead, day) / 1000;
    var out = { kind: plan.window, inside: false, side: null, days_outside: 0, from: null, best: null, to: null, why: '', exactly: '', frost_chance_four_weeks: frost };
    if (!found.stretches.length) { return Object.assign(out, { why: found.none, exactly: found.none_exactly }); }
    var inside = Swardbook.jobDates.windowAt(found.stretches, on);
    if (inside) { return Object.assign(out, edges(inside), { inside: true, why: inside.why, exactly: inside.exactly.why || '' }); }
    var near = found.stretches.map(function (each) { return { days: around(each.first - day), side: 'before', stretch: each }; })
      .concat(found.stretches.map(function (each) { return { days: around(day - each.last), side: 'after', stretch: each }; }));
    var first = near.reduce(function (one, other) { return other.days < one.days ? other : one; });
    var count = first.days === 1 ? '1 day' : first.days + ' days';
    function counted(text) { return [].concat(text || []).map(function (piece) { return typeof piece === 'string' ? piece.replace('{days}', count) : piece; }); }
    return Object.assign(out, edges(first.stretch), {
      side: first.side, days_outside: first.days, why: counted(first.stretch[first.side]), exactly: counted(first.stretch.exactly[first.side])
    });
  }

  function edges(stretch) { return { from: stretch.from, best: stretch.best, to: stretch.to }; }

  function whatThen(outside, side, heatCosts) {
    return heatCosts.concat(side === 'before' ? outside.early : side === 'after' ? outside.late : []).concat(outside.gone_wrong);
  }

  /* --- how much of everything --- */
  /* What the inspection measured, in place of what else fills an input in. */
  function measuredOn(onLawn, measured) {
    var out = {};
    Object.keys(onLawn).forEach(function (name) { if (measured[onLawn[name]] !== undefined) { out[name] = measured[onLawn[name]]; } });
    return out;
  }

  function worked(quantity, area, measured) {
    var found = measuredOn(quantity.on_lawn, measured), filled = Object.assign({}, quantity.filled);
    Object.keys(found).forEach(function (name) { filled[name] = K.measured_here; });
    var values = Object.assign(quantity.lawn ? { area: area } : {}, quantity.values, found);
    return { quantity: quantity, values: values, filled: filled, results: results(quantity.calculator, values) };
  }

  function passes(step, quantities) {
    var found = quantities.filter(function (each) { return step.passes && each.results[step.passes] !== undefined; })[0];
    return found ? Math.round(found.results[step.passes]) : 1;
  }

  function quantityValues(each) {
    var spec = Swardbook.calculators[each.quantity.calculator];
    var inputs = {}, found = {};
    spec.inputs.forEach(function (input) {
      if (each.values[input.name] !== undefined) { inputs[input.name] = amountOf(each.values[input.name], input.unit); }
    });
    spec.results.forEach(function (result) {
      if (each.results[result.name] !== undefined) { found[result.name] = amount(each.results[result.name], result.unit); }
    });
    var measured = each.quantity.measured;
    return {
      calculator: each.quantity.calculator, needs_label: each.quantity.missing.length > 0, measured: measured, filled: each.filled,
      inputs: inputs, results: measured ? {} : found, settings: each.quantity.settings, warnings: measured ? [] : warnings(spec, each)
    };
  }

  function warnings(spec, each) {
    return Swardbook.calculator.warned(spec, Object.assign({}, each.values, each.results)).map(function (warning) { return warning.say; });
  }

  function amountOf(si, spelling) {
    if (!Array.isArray(si)) { return amount(si, spelling); }
    return { value: si.map(function (each) { return Swardbook.calculator.inUnit(each, spelling); }), unit: spelling };
  }

  function shopping(steps) {
    var lines = {}, order = [];
    steps.forEach(function (each) {
      each.worked.forEach(function (one) {
        var buy = one.quantity.buy;
        if (!buy || one.results[buy.result] === undefined) { return; }
        if (!lines[buy.key]) {
          lines[buy.key] = { buy: buy, si: 0, unit: specOf(one.quantity.calculator, buy.result).unit, steps: [] };
          order.push(buy.key);
        }
        if (buy.own && !lines[buy.key].own) {
          lines[buy.key].unit = specOf(one.quantity.calculator, buy.result).unit;
          lines[buy.key].buy = buy;
          lines[buy.key].own = true;
        }
        lines[buy.key].si += one.results[buy.result];
        lines[buy.key].steps.push(each.dated.step.id);
      });
    });
    return order.map(function (name) {
      var line = lines[name];
      var packs = line.buy.pack === null ? null : Math.ceil(line.si / line.buy.pack - K.snap);
      var cost = packs === null || line.buy.price === null ? null : tidy(packs * line.buy.price);
      return {
        name: line.buy.name, product: line.buy.product, amount: amount(line.si, line.unit), packs: packs, price_each: line.buy.price,
        cost: cost, steps: line.steps, note: line.buy.note
      };
    });
  }

  function spoil(steps) {
    return steps.reduce(function (sum, each) {
      return sum + each.worked.reduce(function (part, one) { return part + (one.results[one.quantity.spoil] || 0); }, 0);
    }, 0);
  }

  /* Bags and trailer loads; null where the practice does not say what one holds. */
  function loads(volume, practice) {
    var spoil = practice.spoil, counts = { bags: null, trailer_loads: null };
    if (!Swardbook.calculators['spoil-loads']) { return counts; }
    var found = results('spoil-loads', Object.assign({}, spoil.starts, spoil.holds, { volume: volume }));
    Object.keys(spoil.holds).forEach(function (name) { counts[spoil.counts[name]] = found[spoil.counts[name]]; });
    return counts;
  }

  /* time: what it is made of, see StepTime in generator/jobs/step_time.py. away: the spoil, {m3, trailer_loads}. */
  function minutes(time, area, times, people, away) {
    if (!time || (time.trip && away.trailer_loads === null)) { return null; }
    var machine = time.machine ? results('machine-hours', Object.assign({}, time.machine, { area: area, passes: times })).hours / K.minute : 0;
    var work = (time.fixed || 0) + (time.per_m2 || 0) * area + (time.per_m3 || 0) * away.m3 + machine * (time.shared ? time.pace || 1 : 1);
    return tidy((time.setup || 0) + (time.trip || 0) * (away.trailer_loads || 0) + work / (time.shared ? people : 1));
  }

  /* Litres for a depth [m] where it is driest: time and litres speak of the same water. */
  function litresFor(depth, data, area, measured) {
    var sum = data.practice.run_time;
    if (!sum) { return depth * area * K.litres; }
    return results('irrigation-run-time', Object.assign({}, sum.starts, measuredOn(sum.on_lawn, measured), { depth: depth, area: area })).water * K.litres;
  }

  function watering(dated, area, rain, data, measured) {
    var water = dated.step.watering, out = [];
    if (!water) { return out; }
    var litres = litresFor(water.depth_m, data, area, measured);
    for (var day = dated.date; day <= (dated.until === null ? dated.date : dated.until); day += water.every) {
      var fallen = rain[day] || 0, depth = water.depth_m * 1000;
      out.push({
        date: iso(day), depth_mm: tidy(depth), times: water.times, litres: tidy(litres),
        rain_mm: fallen >= depth ? fallen : null
      });
    }
    return out;
  }

  /* --- what to have ready --- */
  function gear(dated) {
    var uses = {}, order = [];
    dated.forEach(function (each) {
      each.step.gear.forEach(function (thing) {
        if (!uses[thing.key]) { uses[thing.key] = []; order.push(thing.key); }
        uses[thing.key].push({ dated: each, thing: thing });
      });
    });
    return order.map(function (name) {
      var first = uses[name][0];
      var days = Math.max.apply(null, uses[name].map(function (use) { return use.thing.days; }));
      var checked = uses[name].find(function (use) { return use.thing.check; });
      return {
        name: first.thing.name, from: first.thing.from, needed: iso(first.dated.date),
        book_by: first.thing.from === 'own' ? null : iso(first.dated.date - days), check_by: iso(first.dated.date - 1),
        check: checked ? checked.thing.check : null, steps: uses[name].map(function (use) { return use.dated.step.id; })
      };
    });
  }

  function settling(dated) {
    return dated.filter(function (each) { return each.settles !== null; }).map(function (each) {
      var waiting = dated.filter(function (other) { return other.step.after.indexOf(each.step.id) >= 0; }).map(function (other) { return other.step.day; });
      var ready = each.date + each.settles;
      return {
        step: each.step.id, done_on: iso(each.date), days: each.settles,
        first_day: iso(ready - (waiting.length ? Math.min.apply(null, waiting) : 0))
      };
    });
  }

  /* --- what it costs --- */
  function cost(steps, bought, spoilM3, practice, area) {
    if (!practice.priced) { return null; }
    var often = {}, order = [], planned = {}, named = function (task) { return { name: practice.operations[task].name, times: timesOf(often[task]) }; };
    var hands = steps.filter(function (each) { return each.dated.step.who === 'hands' && each.dated.step.task && practice.operations[each.dated.step.task]; });
    function key(each) { return each.dated.step.task + each.dated.date; }
    hands.forEach(function (each) { planned[key(each)] = planned[key(each)] || !each.dated.step.added; });
    hands.forEach(function (each) {
      var task = each.dated.step.task, day = each.dated.date;
      if (!often[task]) { often[task] = {}; order.push(task); }
      /* What an inspection adds is charged once with the rest of its task that day. */
      if (!each.dated.step.added) { often[task][day] = (often[task][day] || 0) + each.passes; }
      else if (!planned[key(each)]) { often[task][day] = Math.max(often[task][day] || 0, each.passes); }
    });
    var charged = order.filter(function (task) { return practice.operations[task].charged; });
    var lines = charged.map(function (task) { return work(practice.operations[task], often[task], practice, area); }).filter(Boolean);
    bought.forEach(function (each) {
      if (each.cost !== null) { lines.push({ kind: 'product', name: each.name, times: each.packs || 0, amount: each.cost }); }
    });
    if (practice.spoil_price && spoilM3) {
      lines.push({ kind: 'spoil', name: K.spoil, times: 1, amount: inCents(spoilM3 * practice.spoil_price) });
    }
    if (!lines.length) { return null; }
    var found = results('estimate', Object.assign({}, practice.estimate, {
      lines: lines.map(function (line) { return line.amount; }), minimum_charge: practice.minimum_charge, tax: practice.tax,
      tax_inside: practice.tax_inside, deposit_share: practice.deposit
    }));
    lines.forEach(function (line) { line.amount = tidy(line.amount); });
    return {
      currency: practice.currency, before_tax: tidy(found.before_tax), tax: tidy(found.tax_amount), total: tidy(found.total),
      deposit: practice.deposit ? tidy(found.deposit) : null, lines: lines,
      included: order.filter(function (task) { return charged.indexOf(task) < 0; }).map(named)
    };
  }

  function timesOf(days) { return Object.keys(days).reduce(function (sum, day) { return sum + days[day]; }, 0); }

  /* A task on all its days; the least price is for a day, however often the machine goes over the lawn then. */
  function work(operation, days, practice, area) {
    var line = { kind: 'work', name: operation.name, times: timesOf(days) }, given = { area: area, price_per_100_m2: operation.price, minimum_price: operation.minimum || 0 };
    if (operation.price) {
      line.amount = inCents(Object.keys(days).reduce(function (sum, day) {
        return sum + results('operation-price', Object.assign({}, practice.price_starts, given, { times_over: days[day] })).price;
      }, 0));
      return line;
    }
    return operation.minimum === null ? null : Object.assign(line, { amount: inCents(operation.minimum * Object.keys(days).length) });
  }

  function inCents(amount) { return Math.floor(amount * K.cents + 0.5 + K.hair) / K.cents; }

  /* --- the whole of it --- */
  function stepValues(each, site) {
    var step = each.dated.step, day = Swardbook.jobDates.dayOfYear(each.dated.date), at = Swardbook.jobDates.at;
    return {
      date: iso(each.dated.date), day: step.day, task: step.task, id: step.id, title: step.title, until: iso(each.dated.until), who: step.who,
      stage: step.stage, after: step.after, planned: iso(each.dated.planned), moved_days: each.dated.date - each.dated.planned,
      moved_by: each.dated.movedBy, level: step.level, how: step.how, counted: step.counted, added: Boolean(step.added), passes: each.passes, minutes: each.minutes, say: step.say, why: step.why,
      only_where: step.only_where, wait_for: step.wait_for, cautions: step.cautions,
      gear: step.gear.map(function (thing) { return thing.name; }), quantities: each.worked.map(quantityValues), watering: each.watering,
      usual: {
        growth: at(site.growth, day), mean_temperature_c: at(site.mean, day) / 10, frost_probability: at(site.frost, day) / 1000
      }
    };
  }

  /* data: {plan, site, practice}; request: {area [m2], people, on, done, rain [mm by day], adjusted, as in jobPlan}, days since 1970. */
  function workOut(data, request) {
    var plan = data.plan, area = request.area, measured = (request.adjusted || {}).measured || {};
    var planned = Swardbook.jobPlan.stepsFor(plan, request.adjusted || {});
    var dated = Swardbook.jobDates.dated(planned.kept, request.on, data.site.settles, request.done || {});
    var steps = dated.map(function (each) {
      var quantities = each.step.quantities.map(function (one) { return worked(one, area, measured); }), times = passes(each.step, quantities);
      return {
        dated: each, worked: quantities, passes: times,
        watering: watering(each, area, request.rain || {}, data, measured)
      };
    });
    var counted = steps.filter(function (each) { return each.dated.step.counted; });
    var bought = shopping(counted), spoilM3 = spoil(counted), away = loads(spoilM3, data.practice), found = verdict(plan, data.site, request.on), people = request.people || data.practice.people;
    steps.forEach(function (each) { each.minutes = minutes(each.dated.step.minutes, area, each.passes, people, { m3: spoilM3, trailer_loads: away.trailer_loads }); });
    var waters = steps.reduce(function (all, each) { return all.concat(each.watering); }, []);
    var hot = Swardbook.jobDates.at(data.site.hot, Swardbook.jobDates.dayOfYear(request.on));
    return {
      on: iso(request.on), people: people, area_m2: area, first: data.site.first.concat(hot === null ? [] : [data.site.hot_said[hot]]),
      window: Object.assign(found, { what_then: whatThen(plan.outside, found.side, hot === null ? [] : data.practice.heat_costs) }),
      steps: steps.map(function (each) { return stepValues(each, data.site); }),
      left_out: planned.leftOut,
      shopping: bought, gear: gear(counted.map(function (each) { return each.dated; })), cost: cost(counted, bought, spoilM3, data.practice, area), spoil_m3: tidy(spoilM3),
      spoil_bags: away.bags, spoil_trailer_loads: away.trailer_loads,
      water: { litres: litres(waters, false), spared_litres: litres(waters, true) }, first_possible: settling(dated)
    };
  }

  function litres(waters, spared) {
    return tidy(waters.reduce(function (sum, day) { return sum + ((day.rain_mm !== null) === spared ? day.litres : 0); }, 0));
  }

  /* What a visit of a programme is worked out by as well (parts/programme). */
  Swardbook.jobWork = {
    workOut: workOut, worked: worked, passes: passes, shopping: shopping, spoil: spoil, loads: loads, minutes: minutes, cost: cost, quantityValues: quantityValues
  };
})();
