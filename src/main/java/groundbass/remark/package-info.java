/**
 * What is to be said of a text that somebody typed: how grave it is, where it stands, the sentence and what would put it
 * right. Knows the moments of a line and the message bundles, and decides nothing about when something is wrong.
 */
package groundbass.remark;
