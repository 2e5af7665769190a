;;; roomspec-words.el --- Words of the room language  -*- lexical-binding: t -*-

;;; Commentary:

;; Generated from the parser's tables by `python -m roomspec_lsp.highlighting.write`.

;;; Code:

(defconst roomspec-headings
  '("adhesive" "fixing" "gang" "job" "method" "panel" "pattern" "room" "rooms" "sealant" "sheet"
    "support" "trim")
  "Words that begin a block.")

(defconst roomspec-parts
  '("ceiling" "wall")
  "Words that begin a part of a block.")

(defconst roomspec-keywords
  '("about" "access" "acclimatise" "adhesive" "all" "allow" "allows" "architrave" "as" "assembly"
    "assume" "at" "balanced" "bar" "bare" "bath" "bathroom" "battens" "bead" "because" "bedroom"
    "behind" "bond" "bottom" "boxing" "built" "butt" "butted" "butts" "by" "cap" "ceiling" "ceilings"
    "cement-board" "centre" "classroom" "clear" "clinic" "cm" "concrete" "contingency" "corner"
    "corners" "cornice" "corridor" "cover" "crosswise" "currency" "cut-outs" "damp" "date" "deep"
    "diagonal" "dining" "direct" "door" "dry" "each" "edge" "edges" "ends" "england" "every" "exclude"
    "expands" "extra" "fillet" "finish" "fire" "first" "fit" "fits" "fix" "fixing" "fixture" "flat"
    "floor" "for" "from" "ft" "ft2" "gang" "gap" "garage" "glue" "gym" "gypsum-fibre" "h" "half"
    "hall" "hatch" "head" "heat" "height" "horizontal" "in" "inside" "inside-corner" "is1200" "jambs"
    "job" "joined" "joint" "joints" "keep" "kerf" "kitchen" "labour" "landing" "lap" "laps" "laundry"
    "lay" "left" "length" "lengthwise" "level" "lined" "lining" "living" "load" "lobby" "locale"
    "long" "loose" "m" "m2" "margin" "masonry" "measured" "meeting" "metal-frame" "method" "mirrored"
    "mitre" "mitred" "mitres" "mm" "more" "narrowest" "net" "never" "nfpa" "niche" "note" "nrm2"
    "office" "on" "open" "openings" "outside" "outside-corner" "over" "overhead" "pack" "painted"
    "panel" "panelled" "panels" "pattern" "peak" "per" "pipe" "plant" "plaster" "plasterboard"
    "plywood" "points" "pool" "price" "profit" "purpose" "radiator" "rate" "reaction" "refitted"
    "remove" "removing" "restaurant" "retail" "reveal" "reveals" "right" "rims" "role" "roll" "room"
    "rooms" "rows" "run-on" "screw" "scribe" "seal" "sealant" "seals" "section" "sequence" "sheet"
    "sheets" "shortest" "shower" "sill" "size" "skirting" "smm7" "socket" "sound" "spa" "spare"
    "splash" "stacked" "stair" "stairs" "start" "stone" "store" "studs" "support" "supports" "surface"
    "swing" "switch" "takes" "tax" "thick" "third" "tile" "timber-frame" "to" "tongue" "top" "tray"
    "trim" "trims" "tube" "under" "units" "unknown" "until" "up" "upstand" "use" "utility" "valid"
    "vertical" "vob" "void" "wall" "wallpaper" "ward" "wc" "weighs" "wet" "window" "workshop")
  "All words of the grammar.")

(defconst roomspec-units
  '("C" "K" "cm" "day" "days" "deg" "feet" "foot" "ft" "ft2" "ft²" "h" "h/ft" "h/ft2" "h/ft²" "h/m"
    "h/m2" "h/m²" "hour" "hours" "in" "inch" "inches" "kg" "kg/m2" "kg/m²" "km" "l" "lb" "lb/ft2"
    "lb/ft²" "m" "m2" "ml" "mm" "mm/m/K" "m²" "yd")
  "Units that are written as words.")

(provide 'roomspec-words)
;;; roomspec-words.el ends here
