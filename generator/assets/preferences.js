/* What a reader chose (units, grass, place, year, first day of the week), kept on this device and
   nowhere else. A browser may refuse storage for a page from a folder: then a choice lasts one page. */
Swardbook.preferences = (function () {
  var prefix = 'swardbook.';
  var here = {};

  function get(name) {
    try {
      var kept = window.localStorage.getItem(prefix + name);
      if (kept !== null) return kept;
    } catch (error) {
      /* Storage refused: what was chosen on this page still counts. */
    }
    return Object.prototype.hasOwnProperty.call(here, name) ? here[name] : null;
  }

  function set(name, value) {
    here[name] = String(value);
    try {
      window.localStorage.setItem(prefix + name, String(value));
    } catch (error) {
      /* As above. */
    }
    Swardbook.tell(name, { value: String(value) });
  }

  /* 'metric' until a reader asks for 'us'. */
  function units() {
    return get('units') === 'us' ? 'us' : 'metric';
  }

  return { get: get, set: set, units: units };
})();

document.documentElement.setAttribute('data-units', Swardbook.preferences.units());
document.addEventListener('swardbook:units', function (event) {
  document.documentElement.setAttribute('data-units', event.detail.value);
});

/* The switch in the header. It is hidden until this runs, so a page without scripts offers no dead button. */
Swardbook.component('units-switch', function (root) {
  function show() {
    var units = Swardbook.preferences.units();
    Array.prototype.forEach.call(root.querySelectorAll('[data-units-choice]'), function (button) {
      button.setAttribute('aria-pressed', String(button.getAttribute('data-units-choice') === units));
    });
  }
  root.addEventListener('click', function (event) {
    var button = event.target.closest('[data-units-choice]');
    if (button) Swardbook.preferences.set('units', button.getAttribute('data-units-choice'));
  });
  document.addEventListener('swardbook:units', show);
  root.hidden = false;
  show();
});
