/* What a reader chose (units, grass, place, year, first day of the week), kept on this device and
   nowhere else. A browser may refuse storage for a page from a folder: then a choice lasts one page. */
Swardbook.preferences = (function () {
  var prefix = 'swardbook.';
  var here = {};

  function get(name) {
    if (Swardbook.own(here, name)) return here[name];
    return Swardbook.device.get(prefix + name);
  }

  function set(name, value) {
    /* Storage refused: what was chosen on this page still counts. */
    if (Swardbook.device.set(prefix + name, String(value))) delete here[name];
    else here[name] = String(value);
    Swardbook.tell(name, { value: String(value) });
  }

  /* 'metric' until a reader asks for 'us'. */
  function units() {
    return get('units') === 'us' ? 'us' : 'metric';
  }

  /* Chosen in another tab: shown here as well. */
  window.addEventListener('storage', function (event) {
    if (event.key === prefix + 'units') Swardbook.tell('units', { value: units() });
    if (['grass', 'place', 'lawn-chosen'].some(function (name) { return event.key === prefix + name; })) Swardbook.tell(event.key.slice(prefix.length), { value: event.newValue });
  });

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
    Swardbook.each(root, '[data-units-choice]', function (button) {
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
