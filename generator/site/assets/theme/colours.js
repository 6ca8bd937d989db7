/* Light or dark, as chosen before or as the device prefers. Runs where the switch stands, ahead of the page, so that no page opens in
   the wrong colours first. */
(function () {
  "use strict";
  var choices = Array.prototype.slice.call(document.querySelectorAll("[data-md-component=palette] input"));
  var kept = window.__md_get("__palette");

  function media(choice) { return choice.getAttribute("data-md-color-media"); }

  function preferred() { return choices.find(function (choice) { return window.matchMedia(media(choice)).matches; }); }

  var chosen = kept ? choices[kept.index] : preferred();
  if (chosen && media(chosen) === "(prefers-color-scheme)") {
    var light = window.matchMedia("(prefers-color-scheme: light)").matches;
    chosen = choices.find(function (choice) { return media(choice) === "(prefers-color-scheme: " + (light ? "light" : "dark") + ")"; });
  }
  if (!chosen) { return; }
  ["media", "scheme", "primary", "accent"].forEach(function (part) {
    document.body.setAttribute("data-md-color-" + part, chosen.getAttribute("data-md-color-" + part));
  });
})();
