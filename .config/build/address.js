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

module.exports = { addressFor, DEVELOPMENT_ADDRESS };
