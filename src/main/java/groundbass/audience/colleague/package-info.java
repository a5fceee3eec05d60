/** Invitations to work on a series or on the site, and ends of that. Knows no page. */
package groundbass.audience.colleague;
