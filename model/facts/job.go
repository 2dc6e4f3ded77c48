package facts

import (
	"time"

	"driploop/model/figure"
	"driploop/model/record"
)

// Job is the facts of the job as a whole.
type Job struct {
	Subject
	Kind      *string `json:"kind,omitempty"`
	Started   *string `json:"started,omitempty"`
	Completed *string `json:"completed,omitempty"`
	SignedBy  *string `json:"signed_by,omitempty"`
	SignedOn  *string `json:"signed_on,omitempty"`
	// LastWork is the latest date of a test, of bedding applied or of completion
	// that the record holds, and LastWorkAt the entry it comes from. AllDated is
	// known, and true, once no part of the work lacks its date.
	LastWork   *string `json:"last_work,omitempty"`
	LastWorkAt *string `json:"last_work_at,omitempty"`
	AllDated   *bool   `json:"all_dated,omitempty"`

	// Today is the day of judging; whoever judges sets it.
	Today *string `json:"today,omitempty"`
	// SignedDigest is the digest of the record that the sign-off carries, Digest
	// that of the record as it is now, taken where there is one to compare it with.
	// DigestGiven: the sign-off speaks of a digest.
	SignedDigest *string `json:"signed_digest,omitempty"`
	Digest       *string `json:"digest,omitempty"`
	DigestGiven  bool    `json:"digest_given"`
}

func job(r *record.Record) *Job {
	f := &Job{Subject: Subject{Path: "job"}}
	s := &f.Subject
	put(s, "kind", &f.Kind, &r.Job.Kind, "kind")
	putDate(s, "started", &f.Started, r.Job.Started, "started")
	putDate(s, "completed", &f.Completed, r.Job.Completed, "completed")
	signed := &Subject{Path: "sign_off"}
	put(signed, "signed_by", &f.SignedBy, &r.SignOff.By, "by")
	putDate(signed, "signed_on", &f.SignedOn, r.SignOff.On, "on")
	for one := range signed.Open.each {
		s.Open.add(*one)
	}
	lastWork(s, f, r)
	s.open("today", figure.Because("the day of judging is not set"))
	sealed(s, f, r)
	return f
}

// sealed sets the digest that was signed and the one of now.
func sealed(s *Subject, f *Job, r *record.Record) {
	f.DigestGiven = r.SignOff.Digest.State != record.Absent
	if !r.SignOff.Digest.Is() {
		s.lacks("signed_digest", "sign_off", "digest")
		s.lacks("digest", "sign_off", "digest")
		return
	}
	f.SignedDigest, f.Digest = &r.SignOff.Digest.V, ptr(record.Digest(r))
}

// lastWork finds the latest dated part of the work, and what has no date.
func lastWork(s *Subject, f *Job, r *record.Record) {
	latest := func(d record.Date, path string) {
		given, ok := d.Get()
		if !ok {
			s.open("all_dated", figure.Missing(path))
			return
		}
		day := given.Format(time.DateOnly)
		if f.LastWork == nil || day > *f.LastWork {
			f.LastWork, f.LastWorkAt = &day, &path
		}
	}
	latest(r.Job.Completed, "job.completed")
	for _, t := range r.Tests {
		latest(t.On, t.Path+".on")
	}
	for _, p := range r.Penetrations {
		if p.Bedding.Compound.V != "none" {
			latest(p.Bedding.Applied, p.Path+".bedding.applied")
		}
	}
	if !s.Open.Has("all_dated") {
		f.AllDated = ptr(true)
	}
	if f.LastWork == nil {
		s.open("last_work", s.Open.Of("all_dated")...)
		s.open("last_work_at", s.Open.Of("all_dated")...)
	}
}
