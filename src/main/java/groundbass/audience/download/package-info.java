/**
 * Records of who took which file and how far it got, written before the first byte leaves. Counts nothing and knows
 * no page.
 */
package groundbass.audience.download;
