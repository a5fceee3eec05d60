/** Where things stay on the public site, for good, and whether what is linked to is there. */
package groundbass.publishing.address;
