const { VERSION } = require("./paths");

const DEVELOPMENT_ADDRESS = "https://localhost:3000";
const PLACEHOLDER_ADDRESS = "https://enclosure-columns.example";

/** Where the add-in will be served from: ENCLOSURE_ADDRESS, without a slash at the end. */
function addressFor(mode) {
  const address = process.env.ENCLOSURE_ADDRESS || (mode === "production" ? PLACEHOLDER_ADDRESS : DEVELOPMENT_ADDRESS);
  if (!/^https:\/\/[^\s"<>&]*[^\s"<>&/]$/.test(address))
    throw new Error(`ENCLOSURE_ADDRESS: got ${address}; give an https address without a slash at the end`);
  if (mode === "production" && /localhost|127\.0\.0\.1/.test(address))
    throw new Error(`ENCLOSURE_ADDRESS: got ${address} in a production build; give the address it will be served from`);
  return address;
}

/**
 * Where its files are: of a release in a folder named after the version, so that Excel, which keeps what it loaded for up to
 * a day, never puts files of two versions together.
 */
function servedFrom(mode) {
  return mode === "production" ? `${addressFor(mode)}/${VERSION}` : addressFor(mode);
}

module.exports = { DEVELOPMENT_ADDRESS, servedFrom };
