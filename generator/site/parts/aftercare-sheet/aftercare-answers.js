/* What clients ask, answered for one day: the rows of the sheet's table that hold on it. The table itself stays as it was printed. */
(function () {
  "use strict";
  var dates = Swardbook.dates, element = Swardbook.element, add = Swardbook.add, list = Swardbook.list;

  /* root: of the sheet. */
  Swardbook.aftercareAnswers = function (root) {
    var table = root.querySelector("[data-part=asked]"), title = root.querySelector("[data-part=days-title]");
    var label = root.querySelector("[data-part=label]"), end = root.querySelector("[data-part=end]");
    var groups = list(table.querySelectorAll("[data-asked]")).filter(function (each) { return each.dataset.asked !== "before"; });
    var lastDay = Math.max.apply(null, list(root.querySelectorAll("[data-to-day]")).map(function (each) { return +each.dataset.toDay; }));

    function rows(group) { return list(group.querySelectorAll("tr[data-first]")); }

    /* The row that holds on a day; of what comes next, the first whose day is still to come. */
    function rowOf(group, day) {
      var coming = group.dataset.asked === "coming";
      return rows(group).filter(function (row) {
        if (row.dataset.last === undefined) { return +row.dataset.first <= day; }
        return coming ? day < +row.dataset.first : +row.dataset.first <= day && day <= +row.dataset.last;
      })[0];
    }

    function copied(from, to) {
      list(from.childNodes).forEach(function (each) { to.appendChild(each.cloneNode(true)); });
      return to;
    }

    /* How long the sprinklers run, as the calculator of these days has it by now. */
    function runTime(calculator) {
      var time = document.querySelector("#" + calculator + " [data-result=run_time] .sb-calculator__figure");
      return time && /\d/.test(time.textContent) ? time.textContent.replace(" ", "\u00a0") : null;
    }

    /* Minutes in place of a can, where the link says how fast the sprinklers are. */
    function timed(answer) {
      list(answer.querySelectorAll("[data-run]")).forEach(function (each) {
        var time = runTime(each.dataset.run);
        if (!time) { return; }
        each.textContent = each.dataset.title ? each.dataset.title + ": run the sprinklers " + time + "." : "Run the sprinklers " + time + " each time.";
      });
    }

    /* 'Not before Mon 26 Oct.', where something is not yet allowed, and the first day when it is. */
    function notBefore(group, row, day, start) {
      function refuses(each) { return each.dataset.may === "not-yet"; }
      var later = refuses(row) && rows(group).filter(function (each) { return +each.dataset.first > day && !refuses(each); })[0];
      return later ? " Not before " + dates.words(start + +later.dataset.first) + "." : "";
    }

    /* How high a grass is kept, where the link names one that the page knows: {name, metric, us}. */
    function height(answer, grass) {
      if (!grass || !grass.metric) { return; }
      Swardbook.words(add(answer, "span"), [" " + grass.name + " is kept at ", [grass.metric, grass.us], "."]);
    }

    function answered(group, day, start, link, grass) {
      var row = rowOf(group, day), box = element("div", "sb-asked__answer"), asked = group.dataset.asked;
      box.dataset.answer = asked;
      add(box, "dt", null, group.querySelector(".sb-asked__question").textContent);
      var said = box.appendChild(element("dd"));
      if (asked === "coming" && row.dataset.last !== undefined) { add(said, "strong", null, dates.words(start + +row.dataset.first) + ": "); }
      copied(row.querySelector("td"), said);
      said.appendChild(document.createTextNode(notBefore(group, row, day, start)));
      if (asked === "water" && link.rate) { timed(said); }
      if (asked === "height") { height(said, grass); }
      if (asked === "walk" && label && day <= lastDay) { copied(label, add(said, "p", "sb-asked__label")); }
      return box;
    }

    this.lastDay = lastDay;

    /* For a day from the job on: the answers as one list. link: what it says of the lawn; grass: see `height`. */
    this.of = function (day, start, link, grass) {
      var all = element("dl", "sb-asked__answers");
      groups.forEach(function (group) { all.appendChild(answered(group, day, start, link, grass)); });
      return all;
    };

    /* For a day before the job: what is still to be done for it, with its dates. */
    this.before = function (day, start) {
      var all = element("ul", "sb-aftercare__now");
      list(table.querySelectorAll("[data-asked=before] tr[data-day]")).forEach(function (row) {
        if (+row.dataset.day < day) { return; }
        var item = add(all, "li");
        add(item, "strong", null, dates.words(start + +row.dataset.day) + ": ");
        copied(row.querySelector("td"), item);
      });
      return all;
    };

    /* What is said once the sheet is over. */
    this.end = function () { return copied(end, element("p")); };

    /* With a day to count from, the table of all days has its dates and stands below them, for today's answers are above; null for none. */
    this.place = function (start) {
      root.classList.toggle("sb-aftercare--dated", start !== null);
      root.classList.toggle("sb-aftercare--over", start !== null && dates.today() - start > lastDay);
      root.insertBefore(table, start === null ? title : root.querySelector("[data-part=gone]").nextSibling);
      list(table.querySelectorAll("[data-part=row-dates]")).forEach(function (each) {
        var row = each.closest("tr").dataset, first = +(row.first || row.day), last = row.last === undefined ? first : +row.last;
        each.textContent = start === null ? "" : " " + dates.stretch(start + first, start + last);
      });
    };
  };
})();
