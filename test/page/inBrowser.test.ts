import { closeBrowser } from "./openPage";
// First: it asks for a dialog as soon as the page is there.
import "./inBrowser/painting";
import "./inBrowser/formulas";
import "./inBrowser/survey";
import "./inBrowser/rows";
import "./inBrowser/saving";
import "./inBrowser/reading";
import "./inBrowser/pane";
import "./inBrowser/paneChanges";
import "./inBrowser/port";
import "./inBrowser/contract";

/*
 * All stories of the local page in one suite: they share a browser and a page in it, which take longer to start than most
 * stories to tell. One of them alone: `npx jest test/page/inBrowser -t "saving"`.
 */

afterAll(closeBrowser);
