import { EVERY_STRUCTURE } from "../enclosure/everyEnclosure";
import { coversItsFaces } from "../suites/coversItsFaces";
import { leavesNothingBare } from "../suites/leavesNothingBare";

coversItsFaces(EVERY_STRUCTURE);
leavesNothingBare(EVERY_STRUCTURE);
