import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { DOMParser, type Document, type Element } from "@xmldom/xmldom";

const SOURCE = "manifest/manifest.xml";
const BUILT = "dist/addin/manifest.xml";
const { version: VERSION } = JSON.parse(readFileSync("package.json", "utf8")) as { readonly version: string };
const FROM = "https://localhost:3000";
const ENTRIES = ["functions.js", "pane.js", "planWorker.js", "surveyWorker.js"];

type ManifestFor = (mode: string, text: string, from: string, served: string) => string;
type Raised = (from: string, to: string, read: (name: string) => string) => readonly (readonly [string, string])[];
const manifestFor = jest.requireActual<ManifestFor>("../../.config/build/manifestFor");
const raised = jest.requireActual<Raised>("../../.config/build/raised");

const LONGEST_RESID = 32;
const LONGEST_SHORT_STRING = 125;
const LONGEST_LONG_STRING = 250;

/** Children in the order of Microsoft's manifest reference; `?` marks one that may be absent. */
const ORDER: Readonly<Record<string, string>> = {
  OfficeApp:
    "Id AlternateId? Version ProviderName DefaultLocale DisplayName Description IconUrl? HighResolutionIconUrl? SupportUrl AppDomains? Hosts Requirements? DefaultSettings Permissions VersionOverrides",
  DefaultSettings: "SourceLocation",
  VersionOverrides: "Description? Requirements? Hosts Resources",
  "Host Workbook": "Runtimes AllFormFactors DesktopFormFactor",
  AllFormFactors: "ExtensionPoint",
  "ExtensionPoint CustomFunctions": "Script Page Metadata Namespace",
  DesktopFormFactor: "GetStarted? FunctionFile ExtensionPoint",
  GetStarted: "Title Description LearnMoreUrl",
  "ExtensionPoint PrimaryCommandSurface": "OfficeTab",
  OfficeTab: "Group",
  Group: "Label Icon Control",
  "Control Button": "Label Supertip Icon Action",
  Supertip: "Title Description",
  "Action ShowTaskpane": "SourceLocation",
  Resources: "bt:Images bt:Urls bt:ShortStrings bt:LongStrings",
};

const built = readManifest(BUILT);
const elements = within(built);

test.each([SOURCE, BUILT])("%s is well formed", (file) => {
  expect(readManifest(file).documentElement?.tagName).toBe("OfficeApp");
});

test("text that is not well formed is refused by the reader used here", () => {
  expect(() => parse("<a><b></a>")).toThrow();
});

test.each(Object.entries(ORDER))("the children of %s are in Excel's order", (name, order) => {
  const places = elements.filter((element) => [element.tagName, titled(element)].includes(name));
  expect(places.length).toBeGreaterThan(0);
  const pattern = order.replace(/(\S+?)(\??)(?: |$)/g, "(?:$1 )$2");
  places.forEach((place) => {
    const tags = [...place.children].map(({ tagName }) => `${tagName} `).join("");
    expect(tags).toMatch(new RegExp(`^${pattern}$`));
  });
});

describe("resources", () => {
  const ids = resources().map((element) => element.getAttribute("id") ?? "");
  const resids = elements.flatMap((element) => element.getAttribute("resid") ?? []);

  test("every resid names a resource, and every resource is used", () => {
    expect([...new Set(resids)].sort()).toEqual([...ids].sort());
  });

  test("ids are at most 32 characters and differ", () => {
    ids.forEach((id) => expect(id.length).toBeLessThanOrEqual(LONGEST_RESID));
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("strings keep to Excel's lengths", () => {
    const lengths = (parent: string): number[] => {
      const strings = resources().filter((element) => element.parentNode?.nodeName === parent);
      return strings.map((element) => valueOf(element).length);
    };
    expect(Math.max(...lengths("bt:ShortStrings"))).toBeLessThanOrEqual(LONGEST_SHORT_STRING);
    expect(Math.max(...lengths("bt:LongStrings"))).toBeLessThanOrEqual(LONGEST_LONG_STRING);
  });
});

test("pane, functions and ribbon run in one shared runtime: one resid", () => {
  const [runtime, ...others] = elements.filter(({ tagName }) => tagName === "Runtime");
  expect(others).toEqual([]);
  expect(runtime?.getAttribute("lifetime")).toBe("long");
  const pages = elements.filter(
    ({ tagName, parentNode }) =>
      tagName === "FunctionFile" ||
      (tagName === "SourceLocation" && ["Page", "Action"].includes(parentNode?.nodeName ?? "")),
  );
  expect(pages.map((page) => page.getAttribute("resid"))).toEqual(Array(3).fill(runtime?.getAttribute("resid")));
});

test("functions are typed as ENC. and the button stands on the Home tab", () => {
  const namespace = elements.find(({ tagName }) => tagName === "Namespace")?.getAttribute("resid");
  const resource = resources().find((element) => element.getAttribute("id") === namespace);
  expect(resource && valueOf(resource)).toBe("ENC");
  expect(elements.find(({ tagName }) => tagName === "OfficeTab")?.getAttribute("id")).toBe("TabHome");
});

describe("addresses in the built manifest", () => {
  const addresses = elements.map(valueOf).filter((value) => /^\w+:/.test(value));

  test("are https, one site, and not this machine", () => {
    expect(readFileSync(BUILT, "utf8")).not.toMatch(/localhost|127\.0\.0\.1/);
    expect(addresses.length).toBeGreaterThan(0);
    addresses.forEach((address) => expect(address).toMatch(/^https:\/\//));
    expect(new Set(addresses.map((address) => new URL(address).host)).size).toBe(1);
  });

  test("each lead to a file of the folder of this version", () => {
    // It may be a folder of a site.
    const site = addresses[0]!.split(`/${VERSION}/`)[0]!;
    addresses.forEach((address) => {
      expect(address.startsWith(`${site}/${VERSION}/`)).toBe(true);
      expect([address, existsSync(path.join("dist/addin", address.slice(site.length)))]).toEqual([address, true]);
    });
  });
});

test("one version in package, lock file and manifest; the identity of the one in use", () => {
  const lock = JSON.parse(readFileSync("package-lock.json", "utf8")) as { readonly version: string };
  expect([lock.version, textOf("Version")]).toEqual([VERSION, `${VERSION}.0`]);
  expect(textOf("Id")).toBe("ca765772-8208-4ef1-95a0-3f87a77c468b");
});

test("under development it is another add-in to Excel: identity, name and namespace differ, all else is the same", () => {
  const source = readFileSync(SOURCE, "utf8");
  const [used, developed] = ["production", "development"].map((mode) => manifestFor(mode, source, FROM, "https://a"));
  expect(used).toBe(source.replaceAll(FROM, "https://a"));
  const lines = used!.split("\n");
  const other = developed!.split("\n").filter((line, index) => line !== lines[index]);
  expect(other.map((line) => /<(\S+)/.exec(line)![1])).toEqual([
    "Id>0d8f1c36-6a0b-4c7e-9f0d-5b1f6f1f9a52</Id>",
    "DisplayName",
    "bt:String",
    "bt:String",
  ]);
  expect(developed).toContain('"ENCDEV"');
  expect(() => manifestFor("development", "<OfficeApp/>", FROM, "https://a")).toThrow("is not there");
});

describe("what is deployed", () => {
  const folder = path.join("dist/addin", VERSION);
  const read = (name: string): string => readFileSync(path.join(folder, name), "utf8");

  test("scripts that are loaded later have a mark of their content in their names", () => {
    const later = readdirSync(folder).filter((name) => name.endsWith(".js") && !ENTRIES.includes(name));
    expect(later.length).toBeGreaterThanOrEqual(2);
    later.forEach((name) => expect(name).toMatch(/^[\w-]+\.[0-9a-f]{8}\.js$/));
    // Each is named by a script, so none is of an earlier build.
    const scripts = ENTRIES.map(read).join("");
    later.forEach((name) => expect(scripts).toContain(name.split(".")[1]));
  });

  test("pages load nothing from elsewhere, and lead to pages that are there", () => {
    for (const name of ["support.html", "privacy.html", "functions.html"]) {
      const links = [...read(name).matchAll(/(?:href|src)="([^"#]+)/g)].map(([, link]) => link!);
      expect(links.length).toBeGreaterThan(0);
      links.forEach((link) => expect([link, existsSync(path.join(folder, link))]).toEqual([link, true]));
    }
    expect(read("support.html")).toContain(`Version ${VERSION}.`);
    expect(readFileSync("dist/addin/HOSTING.md", "utf8")).toContain("Access-Control-Allow-Origin");
  });

  test("every function has its help, at the address that Excel opens", () => {
    const { functions } = JSON.parse(read("functions.json")) as {
      readonly functions: readonly { id: string; helpUrl: string }[];
    };
    const page = read("functions.html");
    functions.forEach(({ id, helpUrl }) => {
      expect(helpUrl).toMatch(new RegExp(`^https://[^#]*/${VERSION}/functions\\.html#${id.replaceAll(".", "\\.")}$`));
      expect(page).toContain(`<h2 id="${id}">`);
    });
  });
});

describe("the next version", () => {
  const read = (name: string): string => readFileSync(name, "utf8");

  test("is raised in package, lock file, manifest and README", () => {
    const files = new Map(raised(VERSION, "9.8.7", read));
    expect([...files.keys()]).toEqual(["package.json", "package-lock.json", "manifest/manifest.xml", "README.md"]);
    expect((JSON.parse(files.get("package.json")!) as { version: string }).version).toBe("9.8.7");
    expect(files.get("package-lock.json")!.match(/"version": "9\.8\.7"/g)).toHaveLength(2);
    expect(files.get("manifest/manifest.xml")).toContain("<Version>9.8.7.0</Version>");
    expect(files.get("README.md")).toMatch(/\*\*Next version\*\*\n\n\*\*9\.8\.7\*\*/);
    expect(raised(VERSION, VERSION, read)).toEqual([]);
  });

  test.each([
    ["0.0.1", "give one higher than"],
    ["2", "give three numbers"],
  ])("%s is refused", (next, cure) => expect(() => raised(VERSION, next, read)).toThrow(cure));
});

test.each([16, 32, 64, 80])("the icon of %i pixels is that size", (size) => {
  const header = readFileSync(`dist/icons/icon-${size}.png`).subarray(0, 24);
  expect(header.toString("latin1", 1, 4)).toBe("PNG");
  expect([header.readUInt32BE(16), header.readUInt32BE(20)]).toEqual([size, size]);
});

test("each image element names the icon of its size", () => {
  const images = elements.filter(
    ({ tagName, parentNode }) => tagName === "bt:Image" && parentNode?.nodeName === "Icon",
  );
  const named = images.map((image) => [image.getAttribute("size"), image.getAttribute("resid")]);
  const expected = ["16", "32", "64", "80"].map((size) => [size, `Icon.${size}`]);
  expect(named).toEqual([...expected, ...expected]);
  resources()
    .filter(({ tagName }) => tagName === "bt:Image")
    .forEach((image) =>
      expect(valueOf(image)).toMatch(new RegExp(`/icon-${image.getAttribute("id")?.replace("Icon.", "")}\\.png$`)),
    );
});

test("Microsoft's manifest reader accepts it", () => {
  const report = execFileSync("node_modules/.bin/office-addin-manifest", ["info", BUILT], { encoding: "utf8" });
  expect(report).toMatch(/Name: Enclosure Columns/);
  expect(report).toMatch(/Hosts: Workbook/);
});

function textOf(tag: string): string {
  return elements.find(({ tagName }) => tagName === tag)?.textContent ?? "";
}

function readManifest(file: string): Document {
  return parse(readFileSync(file, "utf8"));
}

function parse(text: string): Document {
  const onError = (_level: string, message: string): never => {
    throw new Error(message);
  };
  return new DOMParser({ onError }).parseFromString(text, "text/xml");
}

function within(document: Document): readonly Element[] {
  return [...document.getElementsByTagName("*")];
}

function resources(): readonly Element[] {
  return elements.filter((element) => element.getAttribute("id") !== null && /^bt:/.test(element.tagName));
}

function titled(element: Element): string {
  return `${element.tagName} ${element.getAttribute("xsi:type") ?? ""}`;
}

function valueOf(element: Element): string {
  return element.getAttribute("DefaultValue") ?? "";
}
