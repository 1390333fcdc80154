/**
 * The files that name the version, with the next one.
 *
 * @param from the version now
 * @param to the next one; the same leaves all as it is
 * @param read gives the text of a file
 * @returns names and texts of the files that change
 * @throws Error when the next version is not higher, or a file does not name the one now
 */
module.exports = (from, to, read) => {
  if (from === to) return [];
  if (!/^\d+\.\d+\.\d+$/.test(to)) throw new Error(`version: got ${to}; give three numbers such as 1.1.0`);
  if (!isHigher(to, from)) throw new Error(`version: got ${to}; give one higher than ${from}`);
  const places = [
    ["package.json", `"version": "${from}"`, `"version": "${to}"`, 1],
    ["package-lock.json", `"version": "${from}"`, `"version": "${to}"`, 2],
    ["manifest/manifest.xml", `<Version>${from}.0</Version>`, `<Version>${to}.0</Version>`, 1],
    ["README.md", "**Next version**", `**Next version**\n\n**${to}**`, 1],
  ];
  return places.map(([file, found, wanted, times]) => {
    let text = read(file);
    let start = 0;
    for (let time = 0; time < times; time++) {
      const at = text.indexOf(found, start);
      if (at < 0) throw new Error(`${file}: ${found} is not there`);
      text = text.slice(0, at) + wanted + text.slice(at + found.length);
      start = at + wanted.length;
    }
    return [file, text];
  });
};

function isHigher(one, other) {
  const [a, b] = [one, other].map((version) => version.split(".").map(Number));
  const place = a.findIndex((number, index) => number !== b[index]);
  return place >= 0 && a[place] > b[place];
}
