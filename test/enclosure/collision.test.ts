import { holdsTogether } from "../suites/holdsTogether";
import { EVERY_STRUCTURE } from "./everyEnclosure";

holdsTogether(EVERY_STRUCTURE);
