/** Where things stay on the public site, for good. */
package groundbass.publishing.address;
