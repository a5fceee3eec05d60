/** Sound as samples that come block by block. Knows nothing of what makes them or of the files that hold them. */
package groundbass.signal;
