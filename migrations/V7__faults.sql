-- Stored files that were found damaged or missing. A row goes when the file is whole again; what cannot be made again is
-- lost, and its row stays until somebody brings the file back.
create table broken_file (
    sha256   varchar(64) not null primary key,
    found_at timestamp with time zone not null,
    lost     boolean     not null
);

-- One row, written again and again to see whether the database can be written.
create table pulse (
    id   integer not null primary key,
    beat bigint  not null
);

insert into pulse (id, beat) values (1, 0);

-- How often somebody began to listen to an uploaded recording: what ends the program each time is set aside.
alter table upload add column hearing_tries integer default 0 not null;
