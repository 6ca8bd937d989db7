/* From a folder no browser takes a manifest, and one says so on each page. */
(function () {
  "use strict";
  var manifest = document.querySelector("link[rel=manifest]");
  if (manifest && window.location.protocol === "file:") { manifest.remove(); }
})();

/* Where the book is hosted, assets/worker keeps it for a telephone without signal, and this is what a page says to it. A page opened from
   a folder needs no keeping, and no worker would start there: then there is no Swardbook.offline. */
(function () {
  "use strict";
  if (!/^https?:$/.test(window.location.protocol) || !("serviceWorker" in navigator)) { return; }
  var LONGEST_WAIT_MS = 120000, LOOK_AGAIN_MS = 300000;
  var worker = new URL("../offline-worker.js", document.currentScript.src).href, top = new URL(".", worker).href, goingOn = false, typed = [], registered;

  function ask(told) {
    return registered.then(function (registration) {
      return new Promise(function (done) {
        var channel = new MessageChannel();
        channel.port1.onmessage = function (event) { done(event.data); };
        window.setTimeout(done, LONGEST_WAIT_MS, null);
        registration.active.postMessage(told, [channel.port2]);
      });
    }).catch(function () { return null; /* A browser that keeps nothing still shows the book. */ });
  }

  function chosen(told) {
    return Object.assign(told, { grass: Swardbook.preferences.get("grass") || "", place: Swardbook.preferences.get("place") || "" });
  }

  function tell(said) {
    if (said && said.newer) { announce(); }
    Swardbook.tell("offline", said);
    return said;
  }

  /* A piece at a time, so that it can be stopped, and goes on when a page of the book is next opened. */
  function goOn() {
    if (!goingOn) { return Promise.resolve(null); }
    return ask({ do: "more" }).then(function (said) {
      goingOn = goingOn && Boolean(said) && !said.lost && !said.full && said.kept < said.of;
      tell(Object.assign({}, said, { going: goingOn }));
      return goOn();
    });
  }

  function keepWhole() {
    goingOn = true;
    return goOn();
  }

  function end(told) {
    goingOn = false;
    return ask(told).then(tell);
  }

  function fill() {
    var parts = Swardbook.list(document.querySelectorAll("script[src], img[src], link[rel=stylesheet]")).map(function (each) { return each.src || each.href; });
    return ask(chosen({ do: "fill", page: window.location.href.split("#")[0].split("?")[0], parts: parts })).then(function (said) {
      tell(said);
      if (said && said.whole && said.kept < said.of && !goingOn) { keepWhole(); }
    });
  }

  /* What was typed goes along in the history of this tab, and nowhere else. */
  function fields() { return Swardbook.list(document.querySelectorAll("input, select, textarea")); }

  function showNewEdition() {
    var all = fields();
    var kept = typed.filter(function (each) { return document.contains(each) && each.type !== "file"; }).map(function (each) {
      return { id: each.id, at: all.indexOf(each), name: each.name, value: each.value, checked: Boolean(each.checked) };
    });
    window.history.replaceState(Object.assign({}, window.history.state, { sbTyped: kept }), "");
    window.location.reload();
  }

  function putBack() {
    var kept = (window.history.state || {}).sbTyped;
    if (!Array.isArray(kept)) { return; }
    window.history.replaceState(Object.assign({}, window.history.state, { sbTyped: null }), "");
    kept.forEach(function (each) {
      var field = each.id ? document.getElementById(each.id) : fields()[each.at];
      if (!field || field.name !== each.name || (field.value === each.value && Boolean(field.checked) === each.checked)) { return; }
      if (/^(checkbox|radio)$/.test(field.type)) { field.checked = each.checked; } else { field.value = each.value; }
      ["input", "change"].forEach(function (name) { field.dispatchEvent(new Event(name, { bubbles: true })); });
    });
  }

  function announce() {
    if (document.querySelector(".sb-edition")) { return; }
    var box = Swardbook.element("div", "sb-edition"), ways = Swardbook.element("p", "sb-edition__ways");
    box.setAttribute("role", "status");
    ways.append(Swardbook.button("Show it", showNewEdition), Swardbook.button("Later", function () { box.remove(); }));
    document.body.appendChild(box);
    Swardbook.add(box, "p", "", "A new edition of this book is here, and may correct what this page says. What you typed stays.");
    box.appendChild(ways);
  }

  function look() {
    if (document.visibilityState === "visible") { registered.then(function (registration) { return registration.update(); }).catch(function () { /* Without a signal. */ }); }
  }

  document.addEventListener("input", function (event) { if (typed.indexOf(event.target) < 0) { typed.push(event.target); } }, true);
  navigator.serviceWorker.addEventListener("message", function (event) { if (event.data && event.data.newer) { announce(); } });
  window.addEventListener("load", function () {
    putBack();
    registered = navigator.serviceWorker.register(worker, { updateViaCache: "none" }).then(function () { return navigator.serviceWorker.ready; });
    registered.catch(function () { Swardbook.tell("offline", null); });
    fill();
    /* No worker may answer for the folder's address without its slash; a browser remembers for itself where a server sends it on to. */
    if (new URL(top).pathname !== "/") { window.fetch(top.slice(0, -1)).catch(function () { /* Without a signal. */ }); }
    ["grass", "place"].forEach(function (kind) { document.addEventListener("swardbook:" + kind, fill); });
    document.addEventListener("visibilitychange", look);
    window.addEventListener("online", look);
    window.setInterval(look, LOOK_AGAIN_MS);
  });

  Swardbook.offline = {
    top: top,
    keepWhole: keepWhole,
    stop: function () { return end({ do: "stop" }); },
    onlyNeeded: function () { return end(chosen({ do: "only" })); }
  };
})();

/* The way to the page that keeps the whole book, at the foot of each: not where a book is in a folder. */
Swardbook.component("keep-link", function (root) { root.hidden = !Swardbook.offline; });
