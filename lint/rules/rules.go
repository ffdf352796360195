package rules

import "homerun/lint"

// All returns every rule, in the order in which they are explained: record,
// category, length, rating, shielding, pathway, power, tests, transition,
// waiver. The slice is the caller's own.
func All() []*lint.Rule {
	return []*lint.Rule{
		RecordUnreadable,
		RecordUnknownBlock,
		RecordUnknownField,
		RecordMissingField,
		RecordValue,
		RecordLabel,
		RecordDuplicateLabel,
		RecordUnknownReference,
		RecordPortRange,
		RecordPortTwice,
		RecordEndMissing,
		RecordRouteMissing,
		RecordRouteBroken,
		RecordShorterThanRoute,
		RecordLabelForm,
		RecordLabelCollision,

		CategoryWithdrawn,
		CategoryApplication,
		CategoryWeakest,
		CategoryPinout,
		CategoryInsertionLoss,
		CategoryDelay,
		CategorySkew,
		CategoryLoopResistance,
		CategoryFibreReach,
		CategoryFibreLoss,
		CategoryFibreMixed,
		CategoryFibrePolarity,
		CategoryCoaxLoss,
		CategoryCoaxSeries,

		LengthPermanentLink,
		LengthChannel,
		LengthCords,
		LengthConsolidationPoint,
		LengthConnections,
		LengthTemperature,
		LengthTested,

		RatingListing,
		RatingEuroclass,
		RatingOutsidePlant,
		RatingFirestop,
		RatingAbandoned,
		RatingHeat,

		ShieldingNoise,
		ShieldingDistance,
		ShieldingSeparation,
		ShieldingContinuity,
		ShieldingBonding,
		ShieldingConstruction,

		PathwayFill,
		PathwayBends,
		PathwayPull,
		PathwayBendRadius,
		PathwaySupports,

		PowerType,
		PowerDelivered,
		PowerAmpacity,
		PowerBundle,

		TestsMissing,
		TestsFailed,
		TestsLimit,
		TestsStale,

		TransitionLifecycle,
		TransitionLabelReused,
		TransitionWaiver,
		TransitionTestEdited,
		TransitionTestRemoved,

		WaiverExpired,
		WaiverReason,
		WaiverRule,
		WaiverUnmatched,
		WaiverPolicy,
	}
}

// Named finds a rule by its name.
func Named(name string) (*lint.Rule, bool) {
	for _, r := range All() {
		if r.Name == name {
			return r, true
		}
	}
	return nil, false
}
