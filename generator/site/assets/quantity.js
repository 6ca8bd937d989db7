// A quantity as a person types it, read to SI, and an SI value printed back.
// The twin of generator/units/reading.py; both are held to the same vectors. Needs
// Swardbook.units, which the generator writes from the one list of units.
(function () {
  "use strict";
  var Swardbook = (window.Swardbook = window.Swardbook || {});

  var LONGEST_QUANTITY = 80;
  var LONGEST_LIST = 4000;
  var NOT_TYPED = "Nothing is typed here; give a number, with its unit.";
  var NO_READINGS = "Nothing is typed here; give readings such as 12, 14, 15.";
  var FRACTIONS = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"};
  var CHARACTERS = {
    "²": "2", "³": "3", "^": "", "·": "", "º": "°", "℃": "°C", "℉": "°F", "’": "'",
    "′": "'", "”": '"', "″": '"', "“": '"', "⁄": "/", "∕": "/"
  };
  var BLANKS = /[ \t\r\f\v\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff]+/g;
  var QUANTITY = new RegExp(
    "^([+-]?) *(?:(?:([0-9]+)(?: |-))?([0-9]+)/([0-9]+)" +
    "|([0-9]{1,3}(?: [0-9]{3})+(?:[.,][0-9]+)?)(?![0-9.,])" +
    "|([0-9.,]*[0-9][0-9.,]*)([eE][+-]?[0-9]+(?![0-9A-Za-z]))?) *([\\s\\S]*)$"
  );
  var TWO_STEPS = /^((?:ft|feet|foot|lbs?|pounds|h|hrs?|hours?|mins?|minutes?)(?= )|') ?([0-9][\s\S]*)$/;
  var HEMISPHERE = /^(.*(?:[0-9°]|deg|degrees)) ?([NS])$/;
  var PAIR = /\(([^(),;]*),([^(),;]*)\)/g;
  var ONE_POINT = /^(?:[0-9]+\.?[0-9]*|\.[0-9]+)$/;
  var THOUSANDS_OR_DECIMALS = /^[1-9][0-9]{0,2},[0-9]{3}$/;
  var COMMA_GROUPS = /^(?:[0-9]{1,3}(?:,[0-9]{3}){2,}|[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]*)$/;
  var POINT_GROUPS = /^(?:[0-9]{1,3}(?:\.[0-9]{3}){2,}|[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]*)$/;
  var lookup = null;

  function Problem(code, sentence) {
    this.name = "Problem";
    this.code = code;
    this.sentence = sentence;
    this.message = sentence;
  }
  Problem.prototype = Object.create(Error.prototype);
  Problem.prototype.constructor = Problem;

  function has(object, key) { return Object.prototype.hasOwnProperty.call(object, key); }

  function record(spelling) {
    var row = Swardbook.units.units[spelling];
    return {
      spelling: spelling, factor: row[1], offset: row[2],
      dimension: row[3], kind: row[4], system: row[5]
    };
  }

  function tables() {
    if (lookup) { return lookup; }
    lookup = { relaxed: new Map(), whole: new Map() };
    Object.keys(Swardbook.units.atoms).forEach(function (typed) {
      lookup.relaxed.set(typed.toLowerCase(), Swardbook.units.atoms[typed]);
    });
    Object.keys(Swardbook.units.units).forEach(function (spelling) {
      lookup.whole.set(Swardbook.units.units[spelling][0], spelling);
    });
    return lookup;
  }

  function squeezed(spelling) {
    return Array.from(spelling, function (character) {
      return has(CHARACTERS, character) ? CHARACTERS[character] : character;
    }).join("")
      .replace(/(^|[^A-Za-z])[Pp][Ee][Rr](?![A-Za-z])/g, "$1/")
      .replace(/\s+/g, "").replace(/([0-9]),(?=[0-9]{3})/g, "$1").replace(/\.(?![0-9])/g, "")
      .replace(/^(?:seeds?|holes?|slits?)(?=\/)/, "")
      .replace(/^(lbs?|oz|kg|g)(?:of)?(?:N|P|K|P2O5|K2O|S|Fe)(?=\/)/, "$1");
  }

  function atom(typed) {
    var atoms = Swardbook.units.atoms;
    return has(atoms, typed) ? atoms[typed] : tables().relaxed.get(typed.toLowerCase());
  }

  function inWhole(text) {
    return tables().whole.has(text) ? record(tables().whole.get(text)) : null;
  }

  function unit(spelling, american) {
    var text = squeezed(spelling);
    var found = inWhole(text) || inWhole(atom(text) || "?");
    if (found) { return found; }
    var joined = text.split("/").map(function (part) {
      var pieces = /^([0-9]*)([\s\S]*)$/.exec(part);
      var ambiguous = Swardbook.units.ambiguous;
      if (american && has(Swardbook.units.american, pieces[2].toLowerCase())) {
        pieces[2] = Swardbook.units.american[pieces[2].toLowerCase()];
      } else if (has(ambiguous, pieces[2].toLowerCase())) {
        throw new Problem("ambiguous-unit",
          "'" + spelling + "' can mean two things; " + ambiguous[pieces[2].toLowerCase()] + ".");
      }
      return pieces[1] + (atom(squeezed(pieces[2])) || pieces[2]);
    }).join("/");
    found = inWhole(joined);
    if (found) { return found; }
    throw new Problem("unknown-unit",
      "Unknown unit '" + spelling + "'; use one such as kg/100 m2, L/ha, mm or m2.");
  }

  function isUnit(spelling) {
    try { unit(spelling); } catch (problem) { return false; }
    return true;
  }

  function plain(text) {
    Object.keys(FRACTIONS).forEach(function (character) {
      text = text.split(character).join(FRACTIONS[character]);
    });
    return text.replace(/[−–]/g, "-").replace(/\n/g, " ").replace(BLANKS, " ")
      .replace(/^ +| +$/g, "");
  }

  function decimal(digits, american) {
    if (ONE_POINT.test(digits)) { return digits; }
    if (american && THOUSANDS_OR_DECIMALS.test(digits)) { return digits.replace(",", ""); }
    if (THOUSANDS_OR_DECIMALS.test(digits)) {
      throw new Problem("ambiguous-number", "'" + digits + "' could mean " +
        digits.replace(",", "") + " or " + digits.replace(",", ".") +
        "; write it without the comma.");
    }
    if (COMMA_GROUPS.test(digits)) { return digits.replace(/,/g, ""); }
    if (POINT_GROUPS.test(digits)) { return digits.replace(/\./g, "").replace(",", "."); }
    if (digits.split(",").length === 2 && ONE_POINT.test(digits.replace(",", "."))) {
      return digits.replace(",", ".");
    }
    throw new Problem("not-a-number",
      "'" + digits + "' is not a number; write one such as 2.5.");
  }

  function number(found, text, american) {
    var value;
    if (found[4]) {
      if (Number(found[4]) === 0) {
        throw new Problem("division-by-zero", "'" + text + "' divides by zero.");
      }
      value = Number(found[2] || 0) + Number(found[3]) / Number(found[4]);
    } else if (found[5]) {
      value = Number(found[5].replace(/ /g, "").replace(",", "."));
    } else {
      value = Number(decimal(found[6], american) + (found[7] || ""));
    }
    if (!Number.isFinite(value)) { throw tooLarge(text); }
    return found[1] === "-" ? -value : value;
  }

  function tooLarge(text) {
    return new Problem("too-large", "'" + text + "' is too large a number.");
  }

  function isAmerican(spelling, wanted) {
    try {
      return (spelling ? unit(spelling, wanted.system === "us") : wanted).system === "us";
    } catch (problem) { return false; }
  }

  function split(text, wanted) {
    if (!text) { throw new Problem("empty", NOT_TYPED); }
    if (Array.from(text).length > LONGEST_QUANTITY) {
      throw new Problem("too-long", "That is too long for one quantity.");
    }
    var found = QUANTITY.exec(text);
    if (!found) {
      throw new Problem("not-a-number",
        "'" + text + "' is not a quantity; write one such as 2.5.");
    }
    var value = number(found, text, isAmerican(found[8], wanted));
    if (/ 100$/.test(found[5] || "") && isUnit("100 " + found[8])) {
      throw new Problem("ambiguous-number",
        "'" + text + "' can be read two ways; write the number without spaces.");
    }
    return { value: value, unit: found[8] };
  }

  function fits(found, wanted) {
    if (found.dimension !== wanted.dimension) { return false; }
    if (found.dimension !== "1" || found.spelling === wanted.spelling) { return true; }
    if (wanted.kind === "a plain number") { return found.kind !== "an angle"; }
    return found.kind === wanted.kind && found.kind !== "a count";
  }

  function inSi(value, found, wanted, text) {
    if (!fits(found, wanted)) {
      var usual = Object.keys(Swardbook.units.units).map(record).filter(function (known) {
        return known.kind === wanted.kind && fits(known, wanted);
      }).slice(0, 3).map(function (known) { return known.spelling; });
      var examples = [wanted.spelling].concat(usual).filter(function (spelling, i, all) {
        return all.indexOf(spelling) === i;
      });
      throw new Problem("wrong-dimension", "'" + text + "' is " + found.kind + ", but " +
        wanted.kind + " is wanted; use " + examples.join(", ") + ".");
    }
    var si = value * found.factor + found.offset;
    if (!(Math.abs(si) < Swardbook.units.largest)) { throw tooLarge(text); }
    return si;
  }

  function rectangle(text, wanted) {
    var sides = text.split(/ *(?:[xX×*]|by) */);
    if (wanted.dimension !== record("m2").dimension || sides.length !== 2) { return null; }
    var sideUnit = record(wanted.system === "us" ? "ft" : "m");
    var width = split(sides[1], sideUnit);
    var widthUnit = width.unit ? unit(width.unit, wanted.system === "us") : sideUnit;
    var across = inSi(width.value, widthUnit, sideUnit, sides[1]);
    return readAs(sides[0], widthUnit) * across;
  }

  function readAs(text, wanted) {
    text = plain(text);
    var hemisphere = wanted.kind === "an angle" && HEMISPHERE.exec(text);
    if (hemisphere) { return readAs(hemisphere[1], wanted) * (hemisphere[2] === "S" ? -1 : 1); }
    var area = rectangle(text, wanted);
    if (area !== null) { return area; }
    var american = wanted.system === "us";
    var typed = split(text, wanted);
    var steps = TWO_STEPS.exec(typed.unit.replace(/[’′]/g, "'").replace(/[”″“]/g, '"'));
    if (steps) {
      var smaller = split(steps[2], wanted);
      if (!smaller.unit) {
        throw new Problem("unknown-unit", "'" + text + "' needs a unit after its second number.");
      }
      var rest = inSi(smaller.value, unit(smaller.unit, american), wanted, text);
      var larger = inSi(typed.value, unit(steps[1]), wanted, text);
      return typed.value < 0 ? larger - rest : larger + rest;
    }
    return inSi(typed.value, typed.unit ? unit(typed.unit, american) : wanted, wanted, text);
  }

  function read(text, defaultUnit) {
    return readAs(String(text), unit(defaultUnit));
  }

  function separated(text, spacesSeparate) {
    var between = "[,\\n]";
    text = text.replace(/^[ \n]+|[ \n]+$/g, "");
    if (text.indexOf(";") >= 0) {
      between = "[;\\n]|,[ \\n]|[ \\n],";
    } else if (COMMA_GROUPS.test(text) || THOUSANDS_OR_DECIMALS.test(text) || /[0-9],[0-9]/.test(text) && /[0-9][ \n]+[-+.0-9]|,[ \n]|[ \n],/.test(text)) {
      throw new Problem("ambiguous-number",
        "A comma here could separate two readings or be part of a number; leave it out, or separate readings with ';'.");
    }
    var readings = text.split(new RegExp(between + (spacesSeparate ? "| " : "")))
      .map(function (piece) { return piece.replace(/^ +| +$/g, ""); })
      .filter(function (piece) { return /[^ ,]/.test(piece); });
    if (readings.length === 0) { throw new Problem("empty", NO_READINGS); }
    return readings;
  }

  function bare(reading, unitOfAll) {
    var typed = split(reading, unitOfAll);
    if (typed.unit) {
      throw new Problem("not-a-number",
        "'" + reading + "' is not a number; write one such as 2.5.");
    }
    return inSi(typed.value, unitOfAll, unitOfAll, reading);
  }

  function readList(text, defaultUnit) {
    var wanted = unit(defaultUnit);
    text = String(text);
    if (Array.from(text).length > LONGEST_LIST) {
      throw new Problem("too-long", "That is too long a list of readings.");
    }
    text = text.replace(/[−–]/g, "-").replace(BLANKS, " ").replace(PAIR, "$1; $2;")
      .replace(/^[ \n]+|[ \n]+$/g, "");
    if (!text) { throw new Problem("empty", NO_READINGS); }
    var pieces = /^([-+0-9.,;/ \n]*)([\s\S]*)$/.exec(text);
    var oneUnit = pieces[2] && !/[,;\nxX×*]|by/.test(pieces[2]);
    var readings = separated(oneUnit ? pieces[1] : text, oneUnit || !pieces[2]);
    if (!oneUnit) {
      return readings.map(function (reading) { return readAs(reading, wanted); });
    }
    var unitOfAll = unit(plain(pieces[2]), wanted.system === "us");
    inSi(0, unitOfAll, wanted, Array.from(text).slice(0, LONGEST_QUANTITY).join(""));
    return readings.map(function (reading) { return bare(reading, unitOfAll); });
  }

  function figures(value, significantFigures) {
    if (value === 0) { return "0"; }
    var pieces = Math.abs(value).toExponential(significantFigures - 1).split("e");
    var digits = pieces[0].replace(".", "");
    var point = Number(pieces[1]) + 1;
    if (point <= 0) { digits = "0".repeat(1 - point) + digits; point = 1; }
    digits = digits.padEnd(point, "0");
    var text = digits.slice(0, point) + "." + digits.slice(point);
    return (value < 0 ? "-" : "") + text.replace(/0+$/, "").replace(/\.$/, "");
  }

  function show(si, spelling, significantFigures, withUnit) {
    var wanted = unit(spelling);
    var value = (si - wanted.offset) / wanted.factor;
    if (!Number.isFinite(value)) { throw new Problem("too-large", "There is no number to show."); }
    var text = figures(value, significantFigures || 3);
    return withUnit === false || wanted.spelling === "1" ? text : text + " " + wanted.spelling;
  }

  Swardbook.quantity = { Problem: Problem, unit: unit, read: read, readList: readList, show: show };
})();
