/** Stored files in a bucket of an object store that speaks the S3 protocol. */
package groundbass.store.bucket;
