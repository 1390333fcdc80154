import { CAUTION, FIGURES_HELP, FINDING_HELP, SEARCH_HELP, SETTINGS_HELP } from "./helpParts";

/** Help of the command line, and of each command. */
export const HELP: Readonly<Record<string, string>> = {
  "": `enclosure-columns: every board, card, covering and lining piece to cut, for each row of an item survey

  enclosure-columns fill SURVEY [--out FILE]   the survey with its figures in new columns
  enclosure-columns parts --height H --width W --depth D --enclosure KIND
                                               every part to cut for one item
  enclosure-columns plan SURVEY                sheets of each stock, and every sheet with its cuts
  enclosure-columns estimate SURVEY            the materials budget
  enclosure-columns paper SURVEY --what all    tickets, plans, labels, templates, budget, shelf as a PDF
  enclosure-columns apply SURVEY --out FOLDER  an application: narrative, budget, items, shelf, drawings
  enclosure-columns shelf SURVEY               metres of shelf, now and when boxed
  enclosure-columns sizes SURVEY --count N     at most N standard sizes for all items
  enclosure-columns kinds                      the kinds of enclosure, their trays and parts
  enclosure-columns settings                   every setting: value, where it came from, meaning
  enclosure-columns open [SURVEY]              the survey in a spreadsheet in your browser
  enclosure-columns demo [--out FOLDER]        an invented survey, filled

  --json      the answer for a program
  --debug     the details of a fault of the program, for whoever repairs it
  --help      help, also for each command

${CAUTION}`,
  fill: `enclosure-columns fill SURVEY [--out FILE]

Reads an item survey (.xlsx, .xlsm or .csv) and writes it again beside it with figures in new columns: in a workbook as
live formulas with their results. Your file is never written over unless you say --in-place, which keeps a backup.
Every row stays: one that cannot be sized says why in the column "problem".

  --out FILE          where to write (default: SURVEY-filled, beside it); a .csv survey may become .xlsx,
                      and a workbook that may not be changed (protected, Strict) a .csv
  --columns LIST      figures, separated by semicolons: "outside height; side wall length; board area"
${FIGURES_HELP}
  --cut-list          also every part of every item: on a sheet of the workbook, or in a second .csv
  --values            plain values instead of live formulas
  --sheet NAME        the sheet or table that holds the survey, when several might; all reads them as one
  --heading-row N     the row of the headings, when it is not found
  --no-headings       the survey has no row of headings: name its columns by their letters
  --height, --width, --depth, --length, --dimensions, --weight, --enclosure, --identifier, --title, --quantity, --box
                      HEADING or column letter, when the heading is not recognised: --height C
  --not HEADING       a column to leave out; repeat it for more
  --word "A=B"        what a heading or a value means: "box=lidded box", "Joint=joint"
  --unit "A=B"        the unit of one column: "Weight=g"
  --all KIND          the enclosure of every row that names none
  --ticks             columns headed with kinds hold ticks
  --odd WHAT          rows far from all others: keep, or leave-out
  --decimals WHAT     what the point in 1.250 is where decimal commas are used: comma (1250) or point (1.25)
  What you say once is kept on the sheet "words" of a workbook.
  --in-place          write the survey itself, keeping a backup beside it
  --replace           write over an earlier output, keeping a backup beside it

${SETTINGS_HELP}

Exit 0 when the file was written, even if some rows have problems (they are listed); 2 when nothing could be done.

${CAUTION}`,
  parts: `enclosure-columns parts --height H --width W --depth D --enclosure KIND

Every part to cut for one item, with its grain and how to cut it by matching.

  --height, --width, --depth    numbers in the unit, or text such as "10 3/8 in"
  --weight                      kilograms (pounds when the unit is in), or text such as "850 g"
  --enclosure                   a kind: see enclosure-columns kinds

${SETTINGS_HELP}

Example
  enclosure-columns parts --height 300 --width 210 --depth 40 --enclosure slipcase --set "wall board=2.5"

${CAUTION}`,
  plan: `enclosure-columns plan SURVEY

How many sheets of each stock the whole survey takes, how far that is from the least possible, and what the plan asks of
the person who cuts it: cuts, settings of the fence, stages, slivers, open items, loose panels. Grain is kept.
The setting "plan style" is bench (easy to cut) or least sheets.

  --only STOCK        one stock only
  --by HEADING        separate sheets for each value of this heading, such as batch; says how many more that takes
  --sheets            also every sheet, with its pieces and its edge-to-edge cuts in order
  --out FILE.txt      write the sheets to a file
  --replace           write over an earlier output, keeping a backup beside it
${SEARCH_HELP}
${FINDING_HELP}

${SETTINGS_HELP}

${CAUTION}`,
  estimate: `enclosure-columns estimate SURVEY [--out FILE]

The materials budget: net area, sheets or metres to buy, least possible, yield, price, cost, contingency and total; then
what is left out: rows, pieces, and stocks without a price. Totals are sums of the lines as printed.

  --by HEADING        grouped by material (the default), kind, or any heading of the survey, such as batch:
                      each group then has its own sheets, and the output says how many more sheets that takes
  --out FILE          write it too, as .csv or .xlsx; for a workbook, a copy of it with the sheet "Estimate"
  --in-place          put that sheet into the workbook itself, keeping a backup beside it
${SEARCH_HELP}
  --replace           write over an earlier output, keeping a backup beside it
${FINDING_HELP}

${SETTINGS_HELP}`,
  apply: `enclosure-columns apply SURVEY --out FOLDER

The parts of an application for funds, in a folder: application.pdf holds all of it; narrative.docx and narrative.txt,
budget.xlsx (with live sums), budget.csv, items.csv, shelf.csv and the drawings are there to edit. Every number is the
same in all of them. Whether a cost is allowed is the funder's rule: read the call before you send this.

  --out FOLDER        where to write
  --set currency=EUR  the currency of your prices: needed here
  --set "labour rate=24; labour paid=no; match share=25; shipping=40; tax=20; indirect=10; spoilage=5"
                      hours in money, and who pays; starter hours are examples (--set "labour hours=tray 1.5 / ...")
  --set "supplier=NAME; quote date=2026-05-31"   for stocks whose row in the stock table says neither
  --by HEADING        the budget grouped by kind or by any heading of the survey
  --paper NAME        A4 (the default) or Letter
  --date YYYY-MM-DD   the date on the pages (default: today)
${SEARCH_HELP}
  --replace           write over an earlier output, keeping a backup beside it
${FINDING_HELP}

${SETTINGS_HELP}`,
  shelf: `enclosure-columns shelf SURVEY

The room that the survey takes in the store, now and when boxed: metres of shelf for what stands, area for what lies
flat, by the survey's column "shelf", by how it is kept, and by height. Then what each kind of enclosure would take.

  --set "shelf height=230 mm / 330 mm"   clear heights of your shelves; items too tall for every shelf are named
  --set orientation=flat                 keep all flat (or upright); a column headed orientation does so for its row
${FINDING_HELP}

${SETTINGS_HELP}`,
  sizes: `enclosure-columns sizes SURVEY --count N

At most N standard inside sizes for all items: as few as possible made to measure, then least board, and how far that
can be from the least possible. A size is of one kind, one construction and one board. Then the size of each item.

  --count N           how many sizes at most (default: 12)
  --set slack=20      how much larger than needed a size may be in each direction; for more, an item gets its own size
  --seconds S         search that long (default: a fixed search, which gives the same answer on any machine)
${FINDING_HELP}

${SETTINGS_HELP}`,
  paper: `enclosure-columns paper SURVEY [--what LIST] [--out FILE.pdf]

A PDF for the bench, or for an application: fonts embedded, any writing. Tickets are in order of batch, priority, row.

  --what LIST         tickets (the default), plans, labels, templates, estimate, shelf, or all; several with commas;
                      in front of tickets and plans are cautions, what to buy, rows left out, and an index of pages
                      tickets: one leaf for each enclosure: boards on the front, covering and order of work on the back
                      plans: a page for each sheet: its strips and pieces by name, its cuts in order with their fence
                      labels: a label for each piece: number, grain, name on the cutting plan (printed with plans or
                      the estimate), QR code of identifier and part; in a separate file
                      box-labels: a label for each finished box, with its shelf; in the file of the labels of pieces
                      templates: corners, mitres, turn-ins and edges cut in steps, in true size, with bars
                      of 100 mm and 4 in to check the print
                      estimate: the materials budget with method, proof of counts, settings, and what is left out
                      shelf: the room in the store, now and when boxed
  --paper NAME        A4 (the default) or Letter
  --by HEADING        plans and budget for each batch, or each value of any heading, apart
  --two-up            bench tickets on half pages, where half a page holds them: print on both sides, turned on the
                      short edge, and cut; the others are on whole pages after them, and the command names them
  --once              orders of assembly that tickets share are printed once, after the tickets
  --date YYYY-MM-DD   the date on the pages (default: today); with it the same survey gives the same bytes
  --labels SHEET      columns x rows of a label sheet (default: 3x8), or a sheet by paper and number of labels: a4-24,
                      a4-21, a4-14, a4-8, letter-30, letter-10 (their measures are from memory: try one on plain paper)
  --label-size WxH    width x height of a label, such as "63.5 x 38.1" or "2 5/8 in x 1 in"; in the middle of the sheet
  --label-gap WxH     between columns and between rows, such as "2.5 x none" (default: none)
  --label-margin MM   without a size: margin around the labels of a sheet, mm (default: 0)
  --label-order       item (the default) or stock
  --seconds N         search this long for each stock, where plans or estimate are printed (default: 10 s for all
                      together); Ctrl-C keeps the best so far
  --steps N           search this many steps for each stock: the same plan on any machine
  --out FILE          where to write (default: SURVEY-WHAT.pdf, beside it)
  --replace           write over an earlier output, keeping a backup beside it
${FINDING_HELP}

${SETTINGS_HELP}

${CAUTION}`,
  kinds: `enclosure-columns kinds

The kinds of enclosure with their other names, trays, constructions and parts.`,
  settings: `enclosure-columns settings

Every setting: the value in force, where it came from, its standing and meaning.
"common practice" is a habit of the trade without a source; "shop" is a default of this project that every workshop
changes; "from memory" is a number to replace by a measurement of your own.

  --stock-table       the starter stock table instead, as .csv to copy and edit
  --board-guide       the starter board guide instead, as .csv to copy and edit; no published table of board exists

${SETTINGS_HELP}`,
  open: `enclosure-columns open [SURVEY]

Opens a survey (.xlsx, .xlsm or .csv), or the demo survey, as a spreadsheet in your browser, with the functions live.
Only this machine can reach the page, and nothing leaves the machine. A save is a new file beside the survey; every
part of the file that you did not change is kept as it is.

  --port N            the port of the page (default: PORT, else any free port)`,
  demo: `enclosure-columns demo [--out FOLDER]

Writes an invented survey of forty objects (default folder: demo-output), fills it, and prints a summary.
An earlier demo in that folder is replaced.`,
};
