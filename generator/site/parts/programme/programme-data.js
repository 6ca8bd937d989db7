/* What a year of visits is worked out from, loaded when it is asked for, and the year worked out of it: the same as `swardbook programme`.
   Each script calls grass or place; see generator/site/pages/programme/programme_scripts.py. Twin: visit price. */
(function () {
  'use strict';
  var held = { grass: {}, place: {} }, ANY_DAY = 0, MOW = 'mow', K = Swardbook.contract['job-planner'];

  Swardbook.programmes = {
    grass: function (grass, value) { held.grass[grass] = value; },
    place: function (grass, place, value) { held.place[place + '--' + grass] = value; }
  };

  /* {grass, site} of a lawn, or null where this book has no such grass, place or site. */
  function dataOf(lawn) {
    var sites = held.place[lawn.place + '--' + lawn.grass], site = lawn.site || 'open';
    return Swardbook.own(held.grass, lawn.grass) && Swardbook.own(sites, site) ? { grass: held.grass[lawn.grass], site: sites[site] } : null;
  }

  function calculatorsOf(lawn) {
    var grass = Swardbook.own(held.grass, lawn.grass) ? held.grass[lawn.grass] : null, ids = Swardbook.jobs.book() ? Swardbook.jobs.book().sums.slice() : [];
    Object.keys(grass ? grass.tasks : {}).forEach(function (task) { grass.tasks[task].step.quantities.forEach(function (each) { ids.push(each.calculator); }); });
    return ids.filter(function (id) { return !Swardbook.calculators || !Swardbook.calculators[id]; });
  }

  /* Everything that a lawn's year needs, loaded. targets: {programmes, jobs, calculators: folders}. */
  function ready(lawn, targets) {
    var first = [];
    if (!Swardbook.own(held.grass, lawn.grass)) { first.push(targets.programmes + lawn.grass + '.js'); }
    if (!held.place[lawn.place + '--' + lawn.grass]) { first.push(targets.programmes + 'places/' + lawn.place + '--' + lawn.grass + '.js'); }
    if (!Swardbook.jobs.held().practice) { first.push(targets.jobs + 'practice.js'); }
    return Promise.all(first.map(Swardbook.load)).then(function () {
      return Promise.all(calculatorsOf(lawn).map(function (id) { return Swardbook.load(targets.calculators + id + '.js'); }));
    });
  }

  /* What the week of a day is called there. */
  function seasonOf(site, iso) {
    var upto = 0, week = Math.min(Math.floor(Swardbook.dates.dayOfYear(iso) / 7), Swardbook.contract.year.weeks - 1);
    return site.seasons.filter(function (run) { upto += run[1]; return week < upto; })[0][0];
  }

  function worksOf(site) {
    return site.works.map(function (each) { return { task: each[0], rule: each[1], week: each[2], earlier: each[3], later: each[4], limit: each[5] }; });
  }

  /* --- time and price --- */
  function cents(value) { return Math.floor(value * K.cents + 0.5 + K.hair); }

  function steps(tasks, grass, area) {
    return tasks.map(function (task) {
      var step = grass.tasks[task].step, found = step.quantities.map(function (one) { return Swardbook.jobWork.worked(one, area, {}); });
      return { dated: { step: step, date: ANY_DAY }, worked: found, passes: Swardbook.jobWork.passes(step, found) };
    });
  }

  function used(visit, line) {
    return visit.reduce(function (sum, each) {
      return each.worked.reduce(function (part, one) {
        var buy = one.quantity.buy;
        return buy && buy.key === line ? part + (one.results[buy.result] || 0) : part;
      }, sum);
    }, 0);
  }

  /* For each visit, of each product its share of the year's packs. */
  function shares(every, bought) {
    var out = every.map(function () { return []; });
    bought.forEach(function (line) {
      if (line.cost === null) { return; }
      var amounts = every.map(function (visit) { return used(visit, line.product); }), total = amounts.reduce(function (sum, each) { return sum + each; }, 0), before = 0, upto = 0;
      amounts.forEach(function (amount, at) {
        upto += amount;
        var now = total ? cents(line.cost * (upto / total)) : 0;
        if (amount) { out[at].push(Object.assign({}, line, { packs: 1, cost: (now - before) / K.cents })); }
        before = now;
      });
    });
    return out;
  }

  function priced(visit, bought, area, people) {
    var practice = Swardbook.jobs.held().practice, W = Swardbook.jobWork, spoil = W.spoil(visit), loads = W.loads(spoil, practice);
    var times = visit.map(function (each) { return W.minutes(each.dated.step.minutes, area, each.passes, people, { m3: spoil, trailer_loads: loads.trailer_loads }); })
      .filter(function (each) { return each !== null; });
    var found = W.cost(visit, bought, spoil, practice, area);
    return {
      minutes: times.length ? times.reduce(function (sum, each) { return sum + each; }, 0) : null, lines: found ? found.lines : [], none: !found,
      before_tax: found ? cents(found.before_tax) : 0, tax: found ? cents(found.tax) : 0, total: found ? cents(found.total) : 0
    };
  }

  /* {currency, visits: [{minutes, before_tax, tax, total: cents}], cut, cuts, before_tax, tax, total}; null where the practice has no prices. */
  function price(visits, cuts, grass, area) {
    var practice = Swardbook.jobs.held().practice, every = visits.map(function (each) { return steps(each.tasks, grass, area); });
    var bought = shares(every, Swardbook.jobWork.shopping([].concat.apply([], every)));
    var out = { currency: practice.currency, cuts: cuts, visits: every.map(function (each, at) { return priced(each, bought[at], area, practice.people); }) };
    out.cut = cuts && grass.tasks[MOW] ? priced(steps([MOW], grass, area), [], area, practice.people) : null;
    if (out.visits.concat(out.cut || []).every(function (each) { return each.none; })) { return null; }
    ['before_tax', 'tax', 'total'].forEach(function (name) {
      out[name] = out.visits.reduce(function (sum, each) { return sum + each[name]; }, 0) + (out.cut ? out.cut[name] * cuts : 0);
    });
    return out;
  }

  /* The year of a lawn: asked: {wanted, start, tasks: ids, mowing}. {visits: [{day, season, placed, tasks, price}], own, works, renovation, cuts, price}. */
  function planned(lawn, asked) {
    var data = dataOf(lawn), start = Swardbook.dates.fromIso(asked.start), area = Swardbook.lawns.area(lawn), works = worksOf(data.site);
    var found = Swardbook.visitGroups.grouped(works.filter(function (work) { return asked.tasks.indexOf(work.task) >= 0; }), asked.wanted);
    var visits = found.visits.map(function (each) {
      var day = Swardbook.visitGroups.visitDay(each.week, start);
      return { day: day, week: each.week, season: seasonOf(data.site, Swardbook.dates.iso(day)), placed: each.placed, tasks: each.tasks };
    }).sort(function (one, other) { return one.day - other.day; });
    var cuts = asked.mowing ? data.site.cuts.length : 0, sums = price(visits, cuts, data.grass, area), day = data.site.renovation;
    visits.forEach(function (each, at) { each.price = sums ? sums.visits[at] : null; });
    return {
      visits: visits, works: works, own: found.own, cuts: cuts, price: sums, area: area, start: start,
      renovation: day === null ? null : { plan: data.grass.plan, day: Swardbook.visitGroups.comingDay(day, start) }
    };
  }

  Swardbook.programmeOut = {
    dataOf: dataOf, ready: ready, planned: planned, price: price, worksOf: worksOf, seasonOf: seasonOf,
    stepOf: function (lawn, task, area) { return steps([task], held.grass[lawn.grass], area)[0]; }
  };
})();
