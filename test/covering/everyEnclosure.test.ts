import { EVERY_STRUCTURE } from "../enclosure/everyEnclosure";
import { coversItsFaces } from "../suites/coversItsFaces";

coversItsFaces(EVERY_STRUCTURE);
