// Numbers by which edits that follow each other become one step of undo: a range for each hand, so
// that no two ever meet.
#pragma once

namespace tw {

// Of the panel in hand (PanelInHand adds its epoch, so that another figure begins another step).
inline constexpr int kMergeHandles = 1000, kMergeCamera = 2000, kMergeDials = 3000,
                     kMergeLight = 4000, kMergeFigure = 5000, kMergeThings = 6000;
inline constexpr int kMergesPerEpoch = 100'000, kMergeEpochs = 19'000;

// Above all epochs.
inline constexpr int kMergeCopy = 1'900'000'000, kMergeUnderlay = 1'920'000'000,
                     kMergePageEdit = 1'950'000'000;

}  // namespace tw
