/* Marks today on a strip. The drawing is complete without it. */
Swardbook.markToday = function (strip) {
  var months = Swardbook.contract.year.months.map(function (name) { return name.slice(0, 3); });
  var first = strip.getAttribute('data-first').split(' ');
  var today = new Date();
  /* Counted in UTC, so that a change to summer time cannot shift the line. */
  var start = Date.UTC(today.getFullYear(), months.indexOf(first[1]), Number(first[0]));
  var day = (Date.UTC(today.getFullYear(), today.getMonth(), today.getDate()) - start) / 86400000;
  var line = Swardbook.element('span', 'sb-season-strip__today');
  line.style.left = (((day + 365) % 365) / 365) * 100 + '%';
  strip.querySelector('.sb-season-strip__year').appendChild(line);
};

Swardbook.component('season-strip', function (root) {
  if (root.hasAttribute('data-today')) Swardbook.markToday(root);
});
