import { excelPlace } from "../../src/host/excelPlace";

const place = (platform: string, background?: string, version = "1.20") =>
  inOffice(
    {
      platform,
      ...(background === undefined ? {} : { officeTheme: { bodyBackgroundColor: background } }),
      requirements: {
        isSetSupported: (set: string, wanted: string) =>
          set === "ExcelApi" && Number(wanted.split(".")[1]) <= Number(version.split(".")[1]),
      },
    },
    excelPlace,
  );

function inOffice<Answer>(context: object, ask: () => Answer): Answer {
  Object.assign(globalThis, { Office: { context } });
  try {
    return ask();
  } finally {
    Reflect.deleteProperty(globalThis, "Office");
  }
}

test.each([
  ["OfficeOnline", "download"],
  ["PC", "as plain bytes"],
  ["Mac", "never"],
  ["iOS", "never"],
])("a file is saved on %s: %s", (platform, saving) => expect(place(platform).saving).toBe(saving));

test.each([
  ["#FFFFFF", "light"],
  ["#262626", "dark"],
  ["1f1f1f", "dark"],
  ["white", undefined],
  [undefined, undefined],
])("a background of %s is Office's %s theme", (background, colours) =>
  expect(place("PC", background).colours).toBe(colours),
);

test("an Excel that cannot resize a table gives one sentence: what is missing, and that the functions work", () => {
  expect(place("PC", undefined, "1.13").lacking).toBeUndefined();
  expect(place("PC", undefined, "1.12").lacking).toMatch(/needs ExcelApi 1\.13 .*The ENC functions work without it\.$/);
});
