import { attribute, attributeOf, readXml } from "../../src/workbook/readXml";
import { packText } from "../../src/workbook/writeZip";

const MAIN = "urn:main";
const OTHER = "urn:other/relationships";

function tags(xml: string): string[] {
  const seen: string[] = [];
  readXml(packText("part.xml", xml), {
    open: (tag) =>
      seen.push(
        `${tag.uri} ${tag.local} ${attribute(tag, "id") ?? "-"} ${attributeOf(tag, "id", "/relationships") ?? "-"}`,
      ),
    close: (tag) => seen.push(`/${tag.local}`),
  });
  return seen;
}

test("a prefix stands for what the nearest tag around it says", () => {
  expect(
    tags(
      `<x:a xmlns:x="${MAIN}" xmlns:r="${OTHER}"><x:b id="1" r:id="2"><c xmlns="${OTHER}" xmlns:x="urn:new"><x:d/></c></x:b><x:e/><f/></x:a>`,
    ),
  ).toEqual([
    `${MAIN} a - -`,
    `${MAIN} b 1 2`,
    `${OTHER} c - -`,
    `urn:new d - -`,
    "/d",
    "/c",
    "/b",
    `${MAIN} e - -`,
    "/e",
    ` f - -`,
    "/f",
    "/a",
  ]);
});

test.each([
  ["of a tag", `<a><x:b/></a>`],
  ["of an attribute", `<a x:b="1"/>`],
  ["that was declared in another tag", `<a><b xmlns:x="${MAIN}"/><x:c/></a>`],
])("a prefix %s that stands for nothing is refused, also where nobody listens", (_, xml) => {
  expect(() => readXml(packText("part.xml", xml), {})).toThrow('unbound namespace prefix "x"');
});

test.each([
  ["a name with two colons", "<x:y:z xmlns:x='u'/>", "malformed name"],
  ["a name that begins with a colon", "<a :b='1'/>", "malformed name"],
  ["a prefix undeclared", "<a xmlns:x=''><x:b/></a>", 'unbound namespace prefix "x"'],
  ["one attribute under two prefixes", "<a xmlns:x='u' xmlns:y='u' x:b='1' y:b='2'/>", "duplicate attribute {u}b"],
])("%s is refused", (_, xml, why) => {
  expect(() => readXml(packText("part.xml", xml), {})).toThrow(why);
});

test("the prefix xml is always known", () => {
  expect(tags(`<a xml:space="preserve"/>`)).toEqual([" a - -", "/a"]);
});
