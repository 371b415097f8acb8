/**
 * All tests of libs/rulebook but the random ones, in one file: what they load is then loaded once a mutant and not
 * once a file of tests, which makes a run of two hours one of minutes.
 */
import '../rulebook/cells.spec';
import '../rulebook/complaints.spec';
import '../rulebook/cycles.spec';
import '../rulebook/dead-rows.spec';
import '../rulebook/decision-tables.spec';
import '../rulebook/destination.spec';
import '../rulebook/resolve-plan.spec';
import '../rulebook/spreadsheets.spec';
import '../rulebook/times.spec';
