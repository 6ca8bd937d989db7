/* What a job is worked out from, loaded as scripts when it is asked for: a page opened from a folder has no other way.
   Each script calls plan, place, practice, book, inspection or moving; see generator/site/pages/job/job_scripts.py and moving_script.py. */
(function () {
  'use strict';
  var held = { plan: {}, place: {}, practice: null, book: null, inspection: null, moving: null };

  function key(first, second) { return first + '--' + second; }

  Swardbook.jobs = {
    plan: function (plan, grass, value) { held.plan[key(plan, grass)] = value; },
    place: function (grass, place, value) { held.place[key(grass, place)] = value; },
    practice: function (value) { held.practice = value; },
    /* {grasses, plans, places, sites, cautions, calculators, sums, tax, domain}: names, and what goes with what. */
    book: function (value) { if (value) { held.book = value; } return held.book; },
    /* {tasks, asks, outcomes}: names, questions, and what each outcome of the inspection says and adds. */
    inspection: function (value) { if (value) { held.inspection = value; } return held.inspection; },
    /* {lasts, experts, messages, signature, address}: what is asked for when a job is moved. */
    moving: function (value) { if (value) { held.moving = value; } return held.moving; },
    held: function (plan, grass, place, site) {
      var sites = held.place[key(grass, place)];
      return { plan: held.plan[key(plan, grass)], site: sites && sites[site], practice: held.practice };
    }
  };
})();
