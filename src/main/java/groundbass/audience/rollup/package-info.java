/**
 * Sums of what was taken: written once a record cannot change any more, made again from the records at any time, and held
 * against them. Shows nothing and knows no page.
 */
package groundbass.audience.rollup;
