/* Draws a chart again for another site: the numbers are the path. Twin: year chart. */
Swardbook.redrawChart = (function () {
  function points(values) {
    var ends = -Math.floor((values[0] + values[values.length - 1]) / 2);
    var inner = values.map(function (value, week) { return week + '.5 ' + -value; });
    return ['0 ' + ends].concat(inner, values.length + ' ' + ends);
  }

  var shapes = {
    line: function (first) { return 'M' + points(first).join('L'); },
    area: function (first) { return 'M0 0L' + points(first).join('L') + 'L52 0Z'; },
    band: function (first, second) { return 'M' + points(first).join('L') + 'L' + points(second).reverse().join('L') + 'Z'; },
    bars: function (first) { return first.map(function (value, week) { return 'M' + week + '.5 0V' + -value; }).join(''); }
  };

  /* series: lists of 52 whole numbers by name. */
  return function (figure, series) {
    Swardbook.each(figure, '[data-series]', function (drawn) {
      var names = drawn.getAttribute('data-series').split(' ');
      drawn.setAttribute('d', shapes[drawn.getAttribute('data-shape')](series[names[0]], series[names[1]]));
    });
  };
})();
