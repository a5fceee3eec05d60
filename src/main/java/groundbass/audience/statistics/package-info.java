/** What was taken, in numbers and as tables. Writes no record. */
package groundbass.audience.statistics;
