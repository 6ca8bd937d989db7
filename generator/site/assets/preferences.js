/* What a reader chose (units, grass, place, year, first day of the week), kept on this device and
   nowhere else. A browser may refuse storage for a page from a folder: then a choice lasts one page. */
Swardbook.preferences = (function () {
  var prefix = 'swardbook.';
  var here = {};
  var countries = Swardbook.contract.countries;

  function get(name) {
    if (Swardbook.own(here, name)) return here[name];
    return Swardbook.device.get(prefix + name);
  }

  function keep(name, value) {
    /* Storage refused: what was chosen on this page still counts. */
    if (Swardbook.device.set(prefix + name, String(value))) delete here[name];
    else here[name] = String(value);
  }

  function set(name, value) {
    var before = { units: units(), country: country() };
    keep(name, value);
    if (name === 'place') keep('country', countryOf(value) || country());
    Swardbook.tell(name, { value: String(value) });
    if (name !== 'country' && country() !== before.country) Swardbook.tell('country', { value: country() });
    if (name !== 'units' && units() !== before.units) Swardbook.tell('units', { value: units(), by: 'place' });
  }

  /* The country of a place that a reader can choose here; empty for any other. */
  function countryOf(place) {
    return Object.keys(countries).filter(function (code) { return countries[code].places.indexOf(place) >= 0; })[0] || '';
  }

  function countsInUs(code) { return Swardbook.own(countries, code) && countries[code].us; }

  /* Of the place last chosen; before any was, the one whose units were asked for, or that the practice opens its book in. Empty: as the book
     was written. */
  function country() {
    return get('country') || ((get('units') || Swardbook.contract.opens_in) === 'us' ? Object.keys(countries).filter(countsInUs)[0] : '') || '';
  }

  /* As a reader asked for, or else as people count at the chosen place; until then as the practice says. */
  function units() {
    var asked = get('units') || (get('country') ? '' : Swardbook.contract.opens_in);
    return (asked ? asked === 'us' : countsInUs(country())) ? 'us' : 'metric';
  }

  /* Chosen in another tab: shown here as well. */
  window.addEventListener('storage', function (event) {
    if (event.key === prefix + 'units' || event.key === prefix + 'country') {
      Swardbook.tell('country', { value: country() });
      Swardbook.tell('units', { value: units() });
    }
    if (['grass', 'place', 'lawn-chosen'].some(function (name) { return event.key === prefix + name; })) Swardbook.tell(event.key.slice(prefix.length), { value: event.newValue });
  });

  return { get: get, set: set, units: units, country: country };
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
