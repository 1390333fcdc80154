/** What the add-in under development is called, so that Excel takes it for another than the one in use. */
const DEVELOPMENT = [
  ["<Id>ca765772-8208-4ef1-95a0-3f87a77c468b</Id>", "<Id>0d8f1c36-6a0b-4c7e-9f0d-5b1f6f1f9a52</Id>"],
  ['<DisplayName DefaultValue="Enclosure Columns"/>', '<DisplayName DefaultValue="Enclosure Columns (development)"/>'],
  ['id="Functions.Namespace" DefaultValue="ENC"/>', 'id="Functions.Namespace" DefaultValue="ENCDEV"/>'],
  ['id="Group.Label" DefaultValue="Enclosures"/>', 'id="Group.Label" DefaultValue="Enclosures (dev)"/>'],
];

/**
 * The manifest as it is served.
 *
 * @param mode "production", or "development" with an identity of its own
 * @param text manifest/manifest.xml
 * @param from the address in it
 * @param served the address that the add-in's files are served from
 * @throws Error when the manifest no longer holds what is replaced
 */
module.exports = (mode, text, from, served) => {
  const changes = mode === "production" ? [] : DEVELOPMENT;
  const named = changes.reduce((before, [found, wanted]) => {
    if (!before.includes(found)) throw new Error(`manifest.xml: ${found} is not there`);
    return before.replace(found, wanted);
  }, text);
  return named.replaceAll(from, served);
};
